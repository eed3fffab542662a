// Comma-separated values: whatever is read can be written and read again as the same.
#include "core/files/csv.h"

#include "tests/long/fuzz/fuzz_target.h"

namespace holdfast::fuzz {
namespace {

using Records = std::vector<std::vector<std::string>>;

bool readAll(std::string_view text, Records& records) {
    CsvReader reader{text};
    for (;;) {
        auto record = reader.next();
        if (!record.ok())
            return false;
        if (!*record)
            return true;
        records.push_back((*record)->fields);
    }
}

bool isEmptyLine(const std::vector<std::string>& fields) {
    return fields.size() == 1 && fields.front().empty();
}

void readCsv(std::string_view input) {
    Records records;
    const bool isWhole = readAll(input, records);
    CsvNumbers numbers;
    std::string written;
    Records wanted;
    for (const auto& fields : records) {
        CsvLine line;
        for (const std::string& field : fields) {
            (void)numbers.plain(field);
            (void)joinedList(splitList(field));
            line.text(field);
        }
        if (isEmptyLine(fields))
            continue; // passed over by a reader
        written += line.end();
        wanted.push_back(fields);
    }
    if (!isWhole || wanted.empty() || wanted.front().size() < 2)
        return; // the first line tells the separator
    Records again;
    require(readAll(written, again), "what was written can be read");
    for (auto& fields : again)
        for (std::string& field : fields)
            field = unguarded(std::move(field));
    require(again == wanted, "what was written reads as it was");
}

const Registered registeredCsv{"csv", readCsv};

} // namespace
} // namespace holdfast::fuzz

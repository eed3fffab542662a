// SPDX-License-Identifier: GPL-3.0-or-later
// Comma-separated values: whatever is read can be written and read again as the same.
#include "core/csv/csv.h"

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
    (void)readAll(input, records);
    CsvNumbers numbers;
    CsvLine line;
    // As all that we write has one: it tells the separator, and takes the place in which a mark of the byte
    // order would be no text.
    std::string written = line.plain("First").plain("Second").end();
    Records wanted{{"First", "Second"}};
    for (const auto& fields : records) {
        for (const std::string& field : fields) {
            (void)numbers.plain(field);
            (void)joinedList(splitList(field));
            line.text(field);
        }
        const std::string one = line.end();
        if (isEmptyLine(fields))
            continue; // passed over by a reader
        written += one;
        wanted.push_back(fields);
    }
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

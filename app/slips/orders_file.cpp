// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/orders_file.h"

#include "core/csv/csv.h"
#include "db/csv/order_file_reading.h"
#include "db/tables/order_file_rows.h"

#include <algorithm>
#include <fstream>

namespace holdfast::app {

namespace {

constexpr std::uintmax_t kMostBytes = 20'000'000;
constexpr int kLinesLookedAt = 50; // for a first value under each heading

std::vector<std::string> firstValues(const std::string& text, std::size_t headings) {
    std::vector<std::string> first(headings);
    CsvReader reader{text};
    for (int line = 0; line <= kLinesLookedAt; ++line) {
        const auto record = reader.next();
        if (!record.ok() || !*record)
            break;
        if (line == 0)
            continue;
        const std::vector<std::string>& fields = (*record)->fields;
        for (std::size_t at = 0; at < std::min(headings, fields.size()); ++at)
            if (first[at].empty())
                first[at] = unguarded(fields[at]);
    }
    return first;
}

} // namespace

Result<std::string> orderFileText(const std::filesystem::path& path) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(path, error))
        return fieldError("path", said("There is no file {path}.", {{"path", path.string()}}));
    const auto size = std::filesystem::file_size(path, error);
    if (error || size > kMostBytes)
        return fieldError("path", said("{path} is larger than 20 MB. Divide it.", {{"path", path.string()}}));
    std::string text(size, '\0');
    std::ifstream file{path, std::ios::binary};
    if (!file.read(text.data(), static_cast<std::streamsize>(size)))
        return fieldError("path", said("{path} cannot be read.", {{"path", path.string()}}));
    return text;
}

Result<OrdersHead> orderFileHead(db::Connection& connection, std::string text) {
    auto headings = db::headingsOfOrders(text);
    if (!headings.ok())
        return fieldError("path", headings.error().message);
    OrdersHead head;
    head.text = std::move(text);
    head.headings = *headings;
    head.first = firstValues(head.text, head.headings.size());
    if (auto known = db::namingOf(connection, head.headings)) {
        head.naming = std::move(*known);
        head.isKnown = true;
    } else {
        head.naming.headings = head.headings;
        head.naming.columns = likelyColumns(head.headings);
    }
    return head;
}

Result<Done> requireUnchanged(const std::filesystem::path& path, const std::string& textRead) {
    const auto text = orderFileText(path);
    if (!text.ok())
        return text.error();
    if (*text != textRead)
        return fieldError("path", said("The file was changed since it was read. Read it again."));
    return Done{};
}

OrdersTaken takeOrdersBeside(const db::Shop& window, const KnownBefore& known,
                             const std::filesystem::path& path, const std::string& textRead,
                             const OrderFileRead& read, const GoesOn& goesOn) {
    if (const auto unchanged = requireUnchanged(path, textRead); !unchanged.ok())
        return {unchanged.error(), {}};
    const auto beside = ShopBeside::open(window, known);
    if (!beside.ok())
        return {beside.error(), {}};
    auto outcome = db::takeOrdersOfFile((*beside)->file(), read, known.now, goesOn);
    return {std::move(outcome), (*beside)->written()};
}

} // namespace holdfast::app

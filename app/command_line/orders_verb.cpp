// SPDX-License-Identifier: GPL-3.0-or-later
// The orders of a web shop's file, shown and with --yes taken, without a window.
#include "app/command_line/table_files.h"

#include "app/command_line/verbs.h"
#include "app/slips/order_lettering.h"
#include "app/slips/orders_file.h"
#include "core/trade/unit_words.h"
#include "db/csv/order_file_reading.h"

namespace holdfast::app {

namespace {

std::string inLines(const OrderFileRead& read) {
    std::string lines;
    for (const FiledLine& line : read.lines)
        if (!line.wrong.empty() || !line.caution.empty())
            lines += (line.wrong.empty() ? line.caution : line.wrong).english() + "\n";
    for (const FiledOrder& order : read.orders)
        lines += order.reference + "  " + order.draft.customerName + ", " +
                 countWords(std::ssize(order.draft.garments), "garment") + ", promised " +
                 isoLocalMinute(order.draft.promised) + "\n";
    if (const std::size_t known = read.knownOrders(); known > 0)
        lines += countWords(static_cast<std::int64_t>(known), "order") + (known == 1 ? " was" : " were") +
                 " taken before and left out.\n";
    return lines;
}

Result<OrderFileRead> readIn(db::Shop& shop, const std::string& text, const ReckonedShop& reckoned) {
    return shop.read([&](db::Connection& connection) -> Result<OrderFileRead> {
        const auto head = orderFileHead(connection, text);
        if (!head.ok())
            return head.error();
        if (!head->isKnown)
            return plainError(said("The columns of this file are not named yet. Open it once in the window: "
                                   "Take orders from a file."));
        return db::readOrders(connection, text, head->naming, reckoned, lettered);
    });
}

} // namespace

Result<std::string> takeOrders(const Arguments& arguments, const Clock& clock) {
    if (arguments.isDemo)
        return plainError(
            said("The demo is the same each time: nothing is read into it. Name a shop with --shop."));
    const auto reckoned = reckonedShop(arguments, clock);
    if (!reckoned.ok())
        return reckoned.error();
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    const auto text = orderFileText(arguments.target);
    if (!text.ok())
        return text.error();
    auto shop =
        arguments.isSure ? db::Shop::open(*path, clock.now) : db::Shop::openReadOnly(*path, clock.now);
    if (!shop.ok())
        return shop.error();
    const auto read = readIn(**shop, *text, **reckoned);
    if (!read.ok())
        return read.error();
    const std::string lines = inLines(*read);
    if (read->wrongLines() > 0)
        return plainError(
            said("No order was taken, because of what is wrong:{lines}", {{"lines", "\n" + lines}}));
    if (!arguments.isSure || read->orders.empty())
        return lines + "Nothing was taken" + (read->orders.empty() ? ".\n" : ": add --yes to take them.\n");
    const auto taken = db::takeOrdersOfFile(**shop, *read, clock.moment());
    if (!taken.ok())
        return taken.error();
    return lines + "Took " + countWords(taken->taken, "order") + ".\n";
}

} // namespace holdfast::app

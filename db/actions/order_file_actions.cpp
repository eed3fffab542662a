// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/order_file_actions.h"

#include "core/csv/csv.h"
#include "core/trade/limits.h"
#include "db/actions/order_parts.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"
#include "db/tables/order_file_rows.h"

namespace holdfast::db {
namespace {

// What the customer wrote in the web shop is what they want.
constexpr const char* kAgreedInOrder = "in the order";

// Only what is otherwise than before is written: a file that is named already leaves no trace of it.
void writeNaming(Writer& writer, const OrderFileNaming& naming) {
    Connection& connection = writer.connection();
    if (namingOf(connection, naming.headings) == naming)
        return;
    const auto file = writer.newId<RowId>();
    connection.run("INSERT INTO order_file (id, shop, headings) VALUES (?1, ?2, ?3)", file,
                   trimmed(naming.shop), joinedList(naming.headings));
    for (const auto& [column, heading] : naming.columns)
        connection.run(
            "INSERT INTO order_file_column (id, file_id, meaning, heading) VALUES (?1, ?2, ?3, ?4)",
            writer.newId<RowId>(), file, codeOf(column), heading);
    for (const auto& [item, garment] : naming.items)
        connection.run("INSERT INTO order_file_item (id, file_id, item, like_id) VALUES (?1, ?2, ?3, ?4)",
                       writer.newId<RowId>(), file, item, garment);
}

Result<Done> requireSound(const OrderFileRead& file) {
    for (const FiledLine& line : file.lines)
        if (!line.wrong.empty())
            return plainError(line.wrong);
    return checkNaming(file.naming);
}

Result<Done> requireUnknown(Connection& connection, const OrderFileRead& file) {
    const auto known = referencesOf(connection, trimmed(file.naming.shop));
    for (const FiledOrder& order : file.orders)
        if (const auto there = known.find(order.reference); there != known.end())
            return plainError(said("{reference} was taken meanwhile as order {order}. Read the file again.",
                                   {{"reference", order.reference}, {"order", Numeral{there->second}}}));
    return Done{};
}

Result<Done> takeAll(Writer& writer, const OrderFileRead& file, const Now& now, const TellProgress& progress,
                     OrdersOfFile& outcome) {
    const ShopFacts facts = loadFactsOf(writer.connection(), {});
    for (const FiledOrder& order : file.orders) {
        if (const auto checked = checkDraft(order.draft, facts, now); !checked.ok())
            return plainError(said("{reference}: {wrong}",
                                   {{"reference", order.reference}, {"wrong", checked.error().message}}));
        const auto taken = writeOrder(writer, order.draft, facts.settings, now, kAgreedInOrder);
        if (!taken.ok())
            return taken.error();
        writer.connection().run(
            "INSERT INTO order_reference (id, order_id, shop, reference) VALUES (?1, ?2, ?3, ?4)",
            writer.newId<RowId>(), taken->id, trimmed(file.naming.shop), order.reference);
        ++outcome.taken;
        outcome.garments += std::ssize(order.draft.garments);
        if (progress &&
            !progress(static_cast<double>(outcome.taken) / static_cast<double>(file.orders.size())))
            return plainError(said("Stopped. No order was taken."));
    }
    return Done{};
}

} // namespace

Result<OrdersOfFile> takeOrdersOfFile(Shop& shop, const OrderFileRead& file, const Now& now,
                                      const TellProgress& progress) {
    return shop.act([&](Writer& writer) -> Result<OrdersOfFile> {
        OrdersOfFile outcome{0, static_cast<std::int64_t>(file.knownOrders()), 0};
        if (const auto sound = requireSound(file); !sound.ok())
            return sound.error();
        if (file.orders.empty())
            return outcome;
        if (const auto unknown = requireUnknown(writer.connection(), file); !unknown.ok())
            return unknown.error();
        writeNaming(writer, file.naming);
        if (const auto taken = takeAll(writer, file, now, progress, outcome); !taken.ok())
            return taken.error();
        writer.describe(said("{n} order of {shop} taken from a file|{n} orders of {shop} taken from a file",
                             {{"n", outcome.taken}, {"shop", trimmed(file.naming.shop)}}));
        return outcome;
    });
}

} // namespace holdfast::db

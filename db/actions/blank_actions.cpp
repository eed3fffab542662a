// SPDX-License-Identifier: GPL-3.0-or-later
// The rail: blanks that come in and blanks that are counted.
#include "db/actions/blank_actions.h"

#include "core/trade/limits.h"
#include "db/actions/care_checks.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/parts.h"
#include "db/actions/rows.h"

#include <set>
#include <utility>

namespace holdfast::db {
namespace {

constexpr std::int64_t kMostCounted = 100'000;
constexpr std::size_t kMostPartsSaid = 12;

void moveUnits(Writer& writer, BlankLotId lot, std::int64_t units, const std::string& reason) {
    writer.connection().run(
        "INSERT INTO lot_move (id, lot_id, at, units, reason) VALUES (?1, ?2, ?3, ?4, ?5)",
        writer.newId<RowId>(), lot, writer.now(), units, reason);
}

// More garments keep a unit of the lot than there are: those promised last look elsewhere, or wait.
void releaseBeyond(Writer& writer, const LotRow& lot, std::int64_t units) {
    const auto keepers = keepersOf(writer.connection(), lot.id);
    for (std::size_t at = static_cast<std::size_t>(units); at < keepers.size(); ++at)
        giveBack(writer, keepers[at]);
    for (std::size_t at = static_cast<std::size_t>(units); at < keepers.size(); ++at) {
        keepBlank(writer, keepers[at], {lot.style, lot.size, lot.colour});
        if (const auto row = garmentRow(writer.connection(), keepers[at]); row.ok())
            concernsGarment(writer, *row);
    }
}

// "3 × M in Moss"
Sentence deliveredWords(Connection& connection, const DeliveredBlanks& delivered) {
    Query colour = connection.query("SELECT name FROM style_colour WHERE id = ?1", delivered.colour);
    return said("{units} × {size} in {colour}", {{"units", delivered.units},
                                                 {"size", delivered.size},
                                                 {"colour", colour.step() ? colour.text(0) : std::string{}}});
}

} // namespace

Result<BlankLotId> receiveBlanks(Shop& shop, BlankStyleId style, const std::string& size, ColourId colour,
                                 std::int64_t units, const Now& now) {
    return shop.act(
        [&](Writer& writer) { return receiveBlanks(writer, style, size, colour, units, now.today()); });
}

Result<BlankLotId> receiveBlanks(Writer& writer, BlankStyleId style, const std::string& size, ColourId colour,
                                 std::int64_t units, LocalDate receivedOn) {
    if (const auto wrong = firstError({
            within(units,
                   {.field = "units", .what = phrase("The number of blanks"), .least = 1, .most = 5000}),
            checkDay(receivedOn, "receivedOn", phrase("The day they were received"), writer.now()),
        }))
        return *wrong;
    const auto words = blankWords(writer.connection(), style, size, colour);
    if (!words.ok())
        return words.error();
    const auto lot = writer.newId<BlankLotId>();
    writer.connection().run("INSERT INTO blank_lot (id, style_id, size, colour_id, received_on) "
                            "VALUES (?1, ?2, ?3, ?4, ?5)",
                            lot, style, size, colour, receivedOn);
    moveUnits(writer, lot, units, "received");
    giveToWaiting(writer, {style, size, colour});
    writer.describe(said("Received {units} × {blank}", {{"units", units}, {"blank", *words}}));
    writer.concerns(lot);
    writer.concerns(style);
    return lot;
}

Result<Done> receiveDelivery(Shop& shop, BlankStyleId style, std::span<const DeliveredBlanks> blanks,
                             const Now& now) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto name = styleName(writer.connection(), style);
        if (!name.ok())
            return name.error();
        if (blanks.empty())
            return fieldError("units", said("A delivery has at least one blank."));
        std::set<std::pair<std::string, ColourId>> seen;
        std::vector<Sentence> parts;
        std::int64_t all = 0;
        for (const DeliveredBlanks& each : blanks) {
            if (!seen.emplace(each.size, each.colour).second)
                return fieldError(
                    "units", said("The size {size} is named twice in one colour.", {{"size", each.size}}));
            const auto lot = receiveBlanks(writer, style, each.size, each.colour, each.units, now.today());
            if (!lot.ok())
                return lot.error();
            all += each.units;
            parts.push_back(deliveredWords(writer.connection(), each));
        }
        if (blanks.size() == 1)
            return Done{}; // as the part says it
        if (parts.size() > kMostPartsSaid) {
            const auto more = static_cast<std::int64_t>(parts.size() - kMostPartsSaid);
            parts.resize(kMostPartsSaid);
            parts.push_back(said("{n} more", {{"n", Numeral{more}}}));
        }
        writer.describe(said("Received {n} blank of {style}: {parts}|Received {n} blanks of {style}: {parts}",
                             {{"n", all}, {"style", *name}, {"parts", std::move(parts)}}));
        return Done{};
    });
}

Result<Done> correctCount(Shop& shop, BlankLotId lot, std::int64_t counted, const std::string& reason) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked = within(
                counted, {.field = "counted", .what = phrase("The count"), .least = 0, .most = kMostCounted});
            !checked.ok())
            return checked.error();
        const auto why =
            typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!why.ok())
            return why.error();
        const auto row = lotRow(writer.connection(), lot);
        if (!row.ok())
            return row.error();
        if (counted == row->left)
            return Done{};
        moveUnits(writer, lot, counted - row->left, *why);
        if (counted < row->left)
            releaseBeyond(writer, *row, counted);
        else
            giveToWaiting(writer, {row->style, row->size, row->colour});
        writer.describe(
            said("Counted {lot}: {counted} instead of {left}, {why}",
                 {{"lot", row->words}, {"counted", counted}, {"left", row->left}, {"why", *why}}));
        writer.concerns(lot);
        writer.concerns(row->style);
        return Done{};
    });
}

Result<Done> measureShrinkage(Shop& shop, BlankLotId lot, const Shrinkage& shrinkage) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto length = [](std::string_view field, Phrase what, Millimetres measured) {
            return within(measured.value,
                          {.field = field, .what = what, .least = 10, .most = 3000, .unit = " mm"});
        };
        if (const auto wrong = firstError({
                length("lengthBefore", phrase("The length before"), shrinkage.lengthBefore),
                length("lengthAfter", phrase("The length after"), shrinkage.lengthAfter),
                length("widthBefore", phrase("The width before"), shrinkage.widthBefore),
                length("widthAfter", phrase("The width after"), shrinkage.widthAfter),
            }))
            return *wrong;
        const auto row = lotRow(writer.connection(), lot);
        if (!row.ok())
            return row.error();
        writer.connection().run("UPDATE blank_lot SET length_before_mm = ?2, length_after_mm = ?3, "
                                "width_before_mm = ?4, width_after_mm = ?5 WHERE id = ?1",
                                lot, shrinkage.lengthBefore, shrinkage.lengthAfter, shrinkage.widthBefore,
                                shrinkage.widthAfter);
        const double change = dimensionalChange(shrinkage.lengthBefore, shrinkage.lengthAfter);
        writer.describe(said("Measured {lot}: {change} % in length",
                             {{"lot", row->words}, {"change", decimalNumber(change, 1)}}));
        writer.concerns(lot);
        writer.concerns(row->style);
        return Done{};
    });
}

} // namespace holdfast::db

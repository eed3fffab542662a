// SPDX-License-Identifier: GPL-3.0-or-later
// Decals cut from a roll, and those cut wrong.
#include "core/cutting/strip.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/film_actions.h"
#include "db/actions/kept_offcuts.h"
#include "db/actions/roll_ledger.h"
#include "db/actions/rows.h"

#include <algorithm>
#include <set>

namespace holdfast::db {
namespace {

constexpr std::int64_t kMostDecals = kMostPieces; // what one nest takes

Result<Done> requireCuttable(const RollRow& roll, Millimetres length) {
    if (roll.state == RollState::UsedUp)
        return plainError(said("{roll} is used up.", {{"roll", roll.label()}}));
    if (roll.state == RollState::PutAway)
        return plainError(
            said("{roll} is put away. Put it back on the shelf first.", {{"roll", roll.label()}}));
    if (length.value < 1)
        return fieldError("length", said("The length cut must be at least 1 mm."));
    if (length > roll.left)
        return fieldError(
            "length",
            said("{roll} has only {left} left, not {length}.",
                 {{"roll", roll.label()}, {"left", InMetres{roll.left}}, {"length", InMetres{length}}}));
    return Done{};
}

// "order 418", "orders 418, 421", "orders 418, 421, 423 and 2 more": whose decals they are.
std::string ordersOf(Connection& connection, std::span<const DecalId> decals) {
    constexpr std::size_t kNamed = 3;
    std::set<std::int64_t> numbers;
    Query number{connection, "SELECT number FROM decal JOIN garment ON garment.id = garment_id "
                             "JOIN shop_order ON shop_order.id = order_id WHERE decal.id = ?1"};
    for (const DecalId decal : decals) {
        number.bind(1, decal);
        if (number.step())
            numbers.insert(number.integer(0));
        number.reset();
    }
    std::string words = numbers.size() == 1 ? "order " : "orders ";
    std::size_t named = 0;
    for (const std::int64_t each : numbers) {
        if (named == kNamed)
            return words + " and " + std::to_string(numbers.size() - kNamed) + " more";
        words += (named++ > 0 ? ", " : "") + std::to_string(each);
    }
    return words;
}

Result<DecalRow> decalToCut(Connection& connection, const RollRow& roll, DecalId decal) {
    auto row = decalRow(connection, decal);
    if (!row.ok())
        return row;
    const Sentence words =
        said("{garment}, {decal}", {{"garment", row->garment.label()}, {"decal", row->words()}});
    if (const auto open = requireOpen(row->garment); !open.ok())
        return open.error();
    if (row->garment.order.state == OrderState::Quoted)
        return plainError(
            said("Order {order} is a quotation. Confirm it first.", {{"order", row->garment.order.label()}}));
    if (row->cutFrom)
        return fieldError("decals", said("{decal}, is cut already.", {{"decal", words}}));
    if (row->film != roll.film) {
        const auto film = filmName(connection, row->film);
        return film.ok()
                   ? fieldError("decals", said("{decal}, is to be cut from {film}; {roll} is another film.",
                                               {{"decal", words}, {"film", *film}, {"roll", roll.label()}}))
                   : film.error();
    }
    return row;
}

Result<Done> requireNoneHeld(Connection& connection, const RollRow& roll, std::span<const DecalId> decals,
                             const Now& now, KnownConditions known) {
    std::vector<DecalRow> rows;
    for (const DecalId id : decals) {
        auto decal = decalToCut(connection, roll, id);
        if (!decal.ok())
            return decal.error();
        rows.push_back(std::move(decal).value());
    }
    return requireMayBeCut(connection, roll.id, rows, now, known);
}

} // namespace

Result<Done> cutDecals(Shop& shop, RollId roll, std::span<const DecalId> decals, Millimetres length,
                       const Now& now, std::span<const OffcutSize> offcuts,
                       std::span<const KeptOutline> outlines, KnownConditions known) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto count = static_cast<std::int64_t>(decals.size());
        if (const auto checked = within(
                count,
                {.field = "decals", .what = phrase("The number of decals"), .least = 1, .most = kMostDecals});
            !checked.ok())
            return checked.error();
        const auto row = rollRow(writer.connection(), roll);
        if (!row.ok())
            return row.error();
        if (const auto cuttable = requireCuttable(*row, length); !cuttable.ok())
            return cuttable.error();
        if (const auto checked = checkOffcuts(writer.connection(), roll, length, offcuts); !checked.ok())
            return checked.error();
        if (const auto free = requireNoneHeld(writer.connection(), *row, decals, now, known); !free.ok())
            return free.error();
        for (const DecalId id : decals) {
            // One that is named twice is found cut the second time.
            const auto decal = decalToCut(writer.connection(), *row, id);
            if (!decal.ok())
                return decal.error();
            writer.connection().run("UPDATE decal SET cut_roll_id = ?2, cut_at = ?3 WHERE id = ?1", id, roll,
                                    writer.now());
            concernsGarment(writer, decal->garment);
            writer.concerns(id);
        }
        for (const KeptOutline& kept : outlines)
            if (std::ranges::find(decals, kept.decal) != decals.end())
                writer.connection().run("UPDATE decal SET outline = ?2 WHERE id = ?1 AND outline IS NULL "
                                        "AND wording IS NOT NULL",
                                        kept.decal, kept.outline);
        moveLength(writer, roll, -length,
                   "cut " + countWords(count, "decal") + " of " + ordersOf(writer.connection(), decals),
                   LengthKind::Cut);
        const std::vector<Sentence> kept = keepOffcuts(writer, *row, offcuts);
        std::vector<NamedValue> values{{"n", count}, {"roll", row->label()}, {"length", InMetres{length}}};
        if (kept.empty()) {
            writer.describe(said("Cut {n} decal from {roll}, {length}|Cut {n} decals from {roll}, {length}",
                                 std::move(values)));
        } else {
            values.push_back({"kept", kept});
            writer.describe(said("Cut {n} decal from {roll}, {length}, kept {kept}|"
                                 "Cut {n} decals from {roll}, {length}, kept {kept}",
                                 std::move(values)));
        }
        writer.concerns(roll);
        writer.concerns(row->film);
        return Done{};
    });
}

Result<Done> cutFromRolls(Shop& shop, std::span<const RollCut> cuts, const Now& now, KnownConditions known) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Sentence title;
        for (const RollCut& cut : cuts) {
            if (const auto done =
                    cutDecals(shop, cut.roll, cut.decals, cut.length, now, cut.offcuts, cut.outlines, known);
                !done.ok())
                return done;
            title = title.empty() ? writer.title()
                                  : said("{first}; {then}",
                                         {{"first", std::move(title)}, {"then", withinLine(writer.title())}});
        }
        writer.describe(title);
        return Done{};
    });
}

Result<Done> markMiscut(Shop& shop, DecalId decal, const std::string& reason) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto why =
            typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!why.ok())
            return why.error();
        const auto row = decalRow(writer.connection(), decal);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(row->garment); !open.ok())
            return open.error();
        if (!row->cutFrom)
            return plainError(said("{garment}: {decal} is not cut yet.",
                                   {{"garment", row->garment.label()}, {"decal", row->words()}}));
        if (row->garment.isPressed())
            return plainError(said("{garment} is pressed already.", {{"garment", row->garment.label()}}));
        if (row->garment.isOnPress())
            return plainError(said("{garment} is on the press. Step it back to the walk, or mark it spoiled.",
                                   {{"garment", row->garment.label()}}));
        writer.connection().run("UPDATE decal SET cut_roll_id = NULL, cut_at = NULL WHERE id = ?1", decal);
        writer.describe(said("{garment}: {decal} cut wrong, {why}",
                             {{"garment", row->garment.label()}, {"decal", row->words()}, {"why", *why}}));
        concernsGarment(writer, row->garment);
        writer.concerns(decal);
        writer.concerns(*row->cutFrom);
        return Done{};
    });
}

} // namespace holdfast::db

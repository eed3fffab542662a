// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/kept_offcuts.h"

#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/roll_ledger.h"
#include "db/tables/codes.h"
#include "db/tables/ledgers.h"

#include <vector>

namespace holdfast::db {
namespace {

constexpr std::int64_t kSmallestSide = 20;

void copyStays(Writer& writer, RollId from, RollId to) {
    struct Stay {
        PlaceId place;
        Instant since;
    };
    std::vector<Stay> stays;
    Query rows = writer.connection().query(
        "SELECT place_id, since FROM roll_stay WHERE roll_id = ?1 ORDER BY since, id", from);
    while (rows.step())
        stays.push_back({rows.id<PlaceId>(0), rows.instant(1)});
    for (const Stay& stay : stays)
        writer.connection().run(
            "INSERT INTO roll_stay (id, roll_id, place_id, since) VALUES (?1, ?2, ?3, ?4)",
            writer.newId<RowId>(), to, stay.place, stay.since);
}

void copyStrips(Writer& writer, RollId from, RollId to) {
    std::vector<RowId> strips;
    Query rows =
        writer.connection().query("SELECT id FROM test_strip WHERE roll_id = ?1 ORDER BY at, id", from);
    while (rows.step())
        strips.push_back(rows.id<RowId>(0));
    for (const RowId strip : strips)
        writer.connection().run("INSERT INTO test_strip (id, roll_id, at, passed, extends_days, note) "
                                "SELECT ?1, ?2, at, passed, extends_days, note FROM test_strip WHERE id = ?3",
                                writer.newId<RowId>(), to, strip);
}

} // namespace

Result<Done> checkOffcuts(Connection& connection, RollId roll, Millimetres length,
                          std::span<const OffcutSize> offcuts) {
    const std::int64_t rollWidth = connection.number("SELECT width_mm FROM film_roll WHERE id = ?1", roll);
    std::int64_t area = 0;
    for (const OffcutSize& offcut : offcuts) {
        if (const auto wrong = firstError({
                within(offcut.width.value, {.field = "offcuts",
                                            .what = phrase("The width of an offcut"),
                                            .least = kSmallestSide,
                                            .most = rollWidth,
                                            .unit = " mm"}),
                within(offcut.length.value, {.field = "offcuts",
                                             .what = phrase("The length of an offcut"),
                                             .least = kSmallestSide,
                                             .most = length.value,
                                             .unit = " mm"}),
            }))
            return *wrong;
        area += offcut.width.value * offcut.length.value;
    }
    if (area > rollWidth * length.value)
        return fieldError("offcuts", said("The offcuts are more film than was cut off."));
    return Done{};
}

std::vector<Sentence> keepOffcuts(Writer& writer, const RollRow& roll, std::span<const OffcutSize> offcuts) {
    std::vector<Sentence> words;
    for (const OffcutSize& offcut : offcuts) {
        const RollRow kept{writer.newId<RollId>(), nextRollNumber(writer.connection()), roll.film,
                           RollState::OnShelf, offcut.length};
        writer.connection().run("INSERT INTO film_roll (id, number, film_id, width_mm, received_on, made_on, "
                                "printed_use_by, state) "
                                "SELECT ?1, ?2, film_id, ?3, received_on, made_on, printed_use_by, ?4 FROM "
                                "film_roll WHERE id = ?5",
                                kept.id, kept.number, offcut.width, codeOf(RollState::OnShelf), roll.id);
        copyStays(writer, roll.id, kept.id);
        copyStrips(writer, roll.id, kept.id);
        // It was received with its roll: a correction, so that figures do not count it as bought again.
        moveLength(writer, kept.id, offcut.length, "offcut of " + roll.label(), LengthKind::Correction);
        writer.concerns(kept.id);
        words.push_back(
            said("{roll} ({size})", {{"roll", kept.label()}, {"size", Extent{offcut.width, offcut.length}}}));
    }
    return words;
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// Rolls: received, moved, measured, tested, used up.
#include "core/trade/limits.h"
#include "db/actions/care_checks.h"
#include "db/actions/film_actions.h"
#include "db/actions/parts.h"
#include "db/actions/roll_ledger.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/ledgers.h"

namespace holdfast::db {
namespace {

constexpr TextLimits kReason{.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200};

Result<Done> checkDates(const RollReceived& roll, const Now& now) {
    if (auto received =
            checkDay(roll.receivedOn, "receivedOn", phrase("The day it was received"), now.instant);
        !received.ok())
        return received;
    if (roll.receivedOn > now.today())
        return fieldError("receivedOn", said("The day it was received must not lie in the future."));
    if (roll.madeOn) {
        if (*roll.madeOn > roll.receivedOn)
            return fieldError("madeOn",
                              said("The day it was made must not lie after the day it was received."));
        if (auto made = checkDay(*roll.madeOn, "madeOn", phrase("The day it was made"), now.instant);
            !made.ok())
            return made;
    }
    if (!roll.printedUseBy)
        return Done{};
    if (roll.madeOn && *roll.printedUseBy <= *roll.madeOn)
        return fieldError("printedUseBy", said("The printed use-by must lie after the day it was made."));
    if (*roll.printedUseBy < localDate(2000, 1, 1) || *roll.printedUseBy > localDate(2200, 1, 1))
        return fieldError("printedUseBy", said("The printed use-by must lie between 2000 and 2200."));
    return Done{};
}

Result<RollRow> rollInUse(Connection& connection, RollId roll) {
    auto row = rollRow(connection, roll);
    if (row.ok() && row->state == RollState::UsedUp)
        return plainError(said("{roll} is used up.", {{"roll", row->label()}}));
    return row;
}

void addStay(Writer& writer, RollId roll, PlaceId place, Instant since) {
    writer.connection().run("INSERT INTO roll_stay (id, roll_id, place_id, since) VALUES (?1, ?2, ?3, ?4)",
                            writer.newId<RowId>(), roll, place, since);
}

void setState(Writer& writer, RollId roll, RollState state) {
    writer.connection().run("UPDATE film_roll SET state = ?2 WHERE id = ?1", roll, codeOf(state));
}

void concernsRoll(Writer& writer, const RollRow& roll) {
    writer.concerns(roll.id);
    writer.concerns(roll.film);
}

Sentence stripTitle(const std::string& roll, bool passed, const std::string& note) {
    const std::vector<NamedValue> values{{"roll", roll}, {"note", note}};
    if (note.empty())
        return passed ? said("{roll}: test strip passed", {values.front()})
                      : said("{roll}: test strip failed", {values.front()});
    return passed ? said("{roll}: test strip passed, {note}", values)
                  : said("{roll}: test strip failed, {note}", values);
}

// The place it is in now, and since when.
struct Stay {
    PlaceId place;
    Instant since{};
};
std::optional<Stay> lastStay(Connection& connection, RollId roll) {
    Query found = connection.query(
        "SELECT place_id, since FROM roll_stay WHERE roll_id = ?1 ORDER BY since DESC, id DESC LIMIT 1",
        roll);
    if (!found.step())
        return std::nullopt;
    return Stay{found.id<PlaceId>(0), found.instant(1)};
}

} // namespace

Result<RollOnShelf> receiveRoll(Shop& shop, const RollReceived& roll, const Now& now) {
    return shop.act([&](Writer& writer) { return receiveRoll(writer, roll, std::nullopt, now); });
}

Result<RollOnShelf> receiveRoll(Writer& writer, const RollReceived& roll, std::optional<int> number,
                                const Now& now) {
    if (const auto wrong = firstError({
            within(roll.width.value,
                   {.field = "width", .what = phrase("The width"), .least = 20, .most = 2000, .unit = " mm"}),
            within(roll.length.value, {.field = "length",
                                       .what = phrase("The length"),
                                       .least = number ? 20 : 100,
                                       .most = 200'000,
                                       .unit = " mm"}),
            checkDates(roll, now),
        }))
        return *wrong;
    const auto film = filmName(writer.connection(), roll.film);
    if (!film.ok())
        return film.error();
    if (roll.place.isSet())
        if (const auto place = placeName(writer.connection(), roll.place); !place.ok())
            return place.error();

    const int label = number.value_or(nextRollNumber(writer.connection()));
    if (writer.connection().number("SELECT COUNT(*) FROM film_roll WHERE number = ?1", label) > 0)
        return fieldError("roll", said("There is a roll of that number already."));
    const RollRow row{writer.newId<RollId>(), label, roll.film, RollState::OnShelf, roll.length};
    writer.connection().run("INSERT INTO film_roll (id, number, film_id, width_mm, received_on, made_on, "
                            "printed_use_by, state) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
                            row.id, row.number, roll.film, roll.width, roll.receivedOn, roll.madeOn,
                            roll.printedUseBy, codeOf(RollState::OnShelf));
    // One received on an earlier day has been there since that morning.
    const Instant since =
        roll.receivedOn == now.today() ? now.instant : now.toInstant(LocalTime{roll.receivedOn});
    if (roll.place.isSet()) {
        addStay(writer, row.id, roll.place, since);
        writer.concerns(roll.place);
    }
    moveLength(writer, row.id, roll.length, "received", LengthKind::Received);
    writer.describe(said("{roll} received: {film}, {length}",
                         {{"roll", row.label()}, {"film", *film}, {"length", InMetres{roll.length}}}));
    concernsRoll(writer, row);
    return RollOnShelf{row.id, row.number};
}

Result<Done> useUpRoll(Shop& shop, RollId roll, const std::string& reason) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto why = typedText(reason, kReason);
        if (!why.ok())
            return why.error();
        const auto row = rollInUse(writer.connection(), roll);
        if (!row.ok())
            return row.error();
        if (row->left.value != 0)
            moveLength(writer, roll, -row->left, *why, LengthKind::UsedUp);
        setState(writer, roll, RollState::UsedUp);
        writer.describe(said("{roll} used up, {left} written off: {why}",
                             {{"roll", row->label()}, {"left", InMetres{row->left}}, {"why", *why}}));
        concernsRoll(writer, *row);
        return Done{};
    });
}

Result<Done> putRollAway(Shop& shop, RollId roll, bool away) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = rollInUse(writer.connection(), roll);
        if (!row.ok())
            return row.error();
        const std::vector<NamedValue> label{{"roll", row->label()}};
        const auto state = away ? RollState::PutAway : RollState::OnShelf;
        if (row->state == state)
            return plainError(away ? said("{roll} is put away already.", label)
                                   : said("{roll} is on the shelf already.", label));
        setState(writer, roll, state);
        writer.describe(away ? said("{roll} put away", label) : said("{roll} back on the shelf", label));
        concernsRoll(writer, *row);
        return Done{};
    });
}

Result<Done> moveRoll(Shop& shop, RollId roll, PlaceId place) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto name = placeName(writer.connection(), place);
        if (!name.ok())
            return name.error();
        const auto row = rollInUse(writer.connection(), roll);
        if (!row.ok())
            return row.error();
        const auto stay = lastStay(writer.connection(), roll);
        if (stay && stay->place == place)
            return fieldError(
                "place", said("{roll} is in {place} already.", {{"roll", row->label()}, {"place", *name}}));
        // After a clock was set back the new stay still follows the last one.
        addStay(writer, roll, place, stay ? std::max(writer.now(), stay->since) : writer.now());
        writer.describe(said("{roll} moved to {place}", {{"roll", row->label()}, {"place", *name}}));
        concernsRoll(writer, *row);
        writer.concerns(place);
        if (stay)
            writer.concerns(stay->place);
        return Done{};
    });
}

Result<Done> correctLength(Shop& shop, RollId roll, Millimetres measured, const std::string& reason) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked = within(measured.value, {.field = "measured",
                                                         .what = phrase("The measured length"),
                                                         .least = 0,
                                                         .most = 200'000,
                                                         .unit = " mm"});
            !checked.ok())
            return checked.error();
        const auto why = typedText(reason, kReason);
        if (!why.ok())
            return why.error();
        const auto row = rollInUse(writer.connection(), roll);
        if (!row.ok())
            return row.error();
        if (measured == row->left)
            return Done{};
        moveLength(writer, roll, measured - row->left, *why, LengthKind::Correction);
        writer.describe(
            said("{roll} measured: {measured} instead of {left}, {why}", {{"roll", row->label()},
                                                                          {"measured", InMetres{measured}},
                                                                          {"left", InMetres{row->left}},
                                                                          {"why", *why}}));
        concernsRoll(writer, *row);
        return Done{};
    });
}

Result<Done> recordTestStrip(Shop& shop, RollId roll, bool passed, Millimetres used,
                             const std::string& note) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        if (const auto checked = within(
                used.value,
                {.field = "used", .what = phrase("The film used"), .least = 0, .most = 1000, .unit = " mm"});
            !checked.ok())
            return checked.error();
        const auto text =
            typedText(note, {.field = "note", .what = phrase("The note"), .least = 0, .most = 200});
        if (!text.ok())
            return text.error();
        const auto row = rollInUse(writer.connection(), roll);
        if (!row.ok())
            return row.error();
        if (used > row->left)
            return fieldError("used", said("{roll} has only {left} left.",
                                           {{"roll", row->label()}, {"left", InMetres{row->left}}}));
        const std::int64_t extends =
            passed
                ? writer.connection().number("SELECT strip_extends_days FROM film WHERE id = ?1", row->film)
                : 0;
        writer.connection().run("INSERT INTO test_strip (id, roll_id, at, passed, extends_days, note) "
                                "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                                writer.newId<RowId>(), roll, writer.now(), passed, extends, *text);
        if (used.value > 0)
            moveLength(writer, roll, -used, "test strip", LengthKind::TestStrip);
        writer.describe(stripTitle(row->label(), passed, *text));
        concernsRoll(writer, *row);
        return Done{};
    });
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/fair_actions.h"

#include "core/trade/limits.h"
#include "db/actions/changed_fields.h"
#include "db/actions/parts.h"
#include "db/tables/fact_readers.h"
#include "db/tables/facts.h"

#include <algorithm>

namespace holdfast::db {
namespace {

constexpr Money kMostCostOfFair{100'000'000};
constexpr std::int64_t kMostDays = 31;
constexpr std::string_view kNoFair = "workshop";

// Its texts trimmed.
Result<Fair> withSoundTexts(const Fair& typed) {
    Fair fair = typed;
    auto name = typedText(fair.name, {.field = "name", .what = phrase("The fair’s name"), .most = 60});
    if (!name.ok())
        return name.error();
    auto note = typedText(
        fair.note,
        {.field = "note", .what = phrase("The note"), .least = 0, .most = 300, .mayBreakLines = true});
    if (!note.ok())
        return note.error();
    fair.name = std::move(name).value();
    fair.note = std::move(note).value();
    if (fair.name == kNoFair)
        return fieldError("name",
                          said("That is what orders say that were taken at no fair; give it another name."));
    return fair;
}

Result<Done> checkDays(const Fair& fair) {
    if (fair.firstDay < localDate(2000, 1, 1) || fair.firstDay > localDate(2200, 1, 1))
        return fieldError("firstDay", said("The first day must lie between 2000 and 2200."));
    if (fair.lastDay < fair.firstDay)
        return fieldError("lastDay", said("The last day must be no earlier than the first."));
    if (fair.days() > kMostDays)
        return fieldError("lastDay", said("A fair lasts at most 31 days; add a longer one in parts."));
    return Done{};
}

Result<Done> checkHours(const Fair& fair) {
    if (fair.hours.opens < Minutes{0} || fair.hours.closes > Hours{24} ||
        fair.hours.opens >= fair.hours.closes)
        return fieldError("hours",
                          said("The stall must open before it closes, both between 00:00 and 24:00."));
    if (fair.worked && (*fair.worked <= Minutes{0} || *fair.worked > Hours{24} * fair.days() * 3))
        return fieldError("worked",
                          said("The hours worked must be more than none, and no more than three people "
                               "have in the days of the fair; leave them empty where they are those of "
                               "the stall."));
    return Done{};
}

Result<Done> checkCosts(const Fair& fair) {
    const auto wrong = firstError({
        within(fair.stallCost.minor, {.field = "stallCost",
                                      .what = phrase("The stall’s cost"),
                                      .least = 0,
                                      .most = kMostCostOfFair.minor}),
        within(fair.otherCosts.minor, {.field = "otherCosts",
                                       .what = phrase("Other costs"),
                                       .least = 0,
                                       .most = kMostCostOfFair.minor}),
    });
    return wrong ? Result<Done>{*wrong} : Result<Done>{Done{}};
}

// Two of one name on one day, and nobody could say to which of them an order belongs.
Result<Done> checkIsAlone(Connection& connection, const Fair& fair) {
    if (connection.number("SELECT COUNT(*) FROM fair WHERE name = ?1 COLLATE NOCASE AND id <> ?2 "
                          "AND first_day <= ?4 AND last_day >= ?3",
                          fair.name, fair.id, fair.firstDay, fair.lastDay) == 0)
        return Done{};
    return fieldError("name",
                      said("“{fair}” is in the list on one of these days already.", {{"fair", fair.name}}));
}

Result<Fair> soundFair(Connection& connection, const Fair& typed) {
    auto fair = withSoundTexts(typed);
    if (!fair.ok())
        return fair;
    if (const auto wrong = firstError(
            {checkDays(*fair), checkHours(*fair), checkCosts(*fair), checkIsAlone(connection, *fair)}))
        return *wrong;
    return fair;
}

Result<Fair> fairRow(Connection& connection, FairId id) {
    UnreadFacts unread;
    const std::vector<Fair> fairs = readFairs(connection, unread);
    const auto found = std::ranges::find(fairs, id, &Fair::id);
    if (found == fairs.end())
        return fieldError("fair", said("There is no such fair."));
    return *found;
}

std::vector<LocalDate> daysOfOrders(Connection& connection, const Fair& fair, const Now& now) {
    std::vector<LocalDate> days;
    Query rows = connection.query(
        "SELECT taken_at FROM shop_order WHERE taken_at_place = ?1 AND taken_at >= ?2 AND taken_at < ?3 "
        "ORDER BY taken_at",
        fair.name, now.toInstant(LocalTime{fair.firstDay}), now.toInstant(LocalTime{fair.lastDay + Days{1}}));
    while (rows.step())
        days.push_back(dateOf(now.toLocal(rows.instant(0))));
    return days;
}

Result<Done> checkKeepsItsOrders(const std::vector<LocalDate>& days, const Fair& after) {
    for (const LocalDate day : days)
        if (!after.isOn(day))
            return fieldError(
                day < after.firstDay ? "firstDay" : "lastDay",
                said("Orders were taken there on {day}; the fair must keep that day.", {{"day", day}}));
    return Done{};
}

void rename(Connection& connection, const Fair& before, const Fair& after, const Now& now) {
    connection.run("UPDATE shop_order SET taken_at_place = ?1 WHERE taken_at_place = ?2 AND taken_at >= ?3 "
                   "AND taken_at < ?4",
                   after.name, before.name, now.toInstant(LocalTime{before.firstDay}),
                   now.toInstant(LocalTime{before.lastDay + Days{1}}));
    if (before.isOn(now.today()) && loadSettings(connection).fairName == before.name)
        connection.run("UPDATE setting SET value = ?1 WHERE name = 'fair-name'", after.name);
}

std::vector<Sentence> fairChanges(Connection& connection, const Fair& before, const Fair& after) {
    const Currency currency = loadSettings(connection).currency;
    const auto time = [](Minutes sinceMidnight) { return TimeOfDay{LocalTime{sinceMidnight}}; };
    const auto worked = [](const std::optional<Minutes>& minutes) {
        return minutes ? Value{said("{minutes} min", {{"minutes", minutes->count()}})}
                       : Value{phrase("the hours of the stall")};
    };
    ChangedFields changes;
    changes.note("name", before.name, after.name);
    changes.note("first_day", before.firstDay, after.firstDay);
    changes.note("last_day", before.lastDay, after.lastDay);
    changes.note("opens_min", time(before.hours.opens), time(after.hours.opens));
    changes.note("closes_min", time(before.hours.closes), time(after.hours.closes));
    changes.note("stall_minor", Amount{before.stallCost, currency}, Amount{after.stallCost, currency});
    changes.note("other_minor", Amount{before.otherCosts, currency}, Amount{after.otherCosts, currency});
    changes.note("worked_min", worked(before.worked), worked(after.worked));
    changes.noteText("note", before.note, after.note);
    return changes.words();
}

// "Harbour Fair, 14 Nov 2026"
std::string wordsOf(const Fair& fair) {
    return fair.name + ", " + spokenDate(fair.firstDay);
}

} // namespace

Result<FairId> addFair(Shop& shop, const Fair& typed) {
    return shop.act([&](Writer& writer) { return addFair(writer, typed); });
}

Result<FairId> addFair(Writer& writer, const Fair& typed) {
    Fair added = typed;
    added.id = writer.newId<FairId>();
    const auto fair = soundFair(writer.connection(), added);
    if (!fair.ok())
        return fair.error();
    writer.connection().run("INSERT INTO fair (id, name, first_day, last_day, opens_min, closes_min, "
                            "stall_minor, other_minor, worked_min, note) "
                            "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
                            fair->id, fair->name, fair->firstDay, fair->lastDay, fair->hours.opens,
                            fair->hours.closes, fair->stallCost, fair->otherCosts, fair->worked, fair->note);
    writer.describe(said("Fair added: {fair}", {{"fair", wordsOf(*fair)}}));
    writer.concerns(fair->id);
    return fair->id;
}

Result<Done> changeFair(Shop& shop, const Fair& typed, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        const auto before = fairRow(connection, typed.id);
        if (!before.ok())
            return before.error();
        const auto fair = soundFair(connection, typed);
        if (!fair.ok())
            return fair.error();
        if (const auto kept = checkKeepsItsOrders(daysOfOrders(connection, *before, now), *fair); !kept.ok())
            return kept.error();
        const std::vector<Sentence> changes = fairChanges(connection, *before, *fair);
        if (changes.empty())
            return Done{};
        if (fair->name != before->name)
            rename(connection, *before, *fair, now);
        connection.run("UPDATE fair SET name = ?2, first_day = ?3, last_day = ?4, opens_min = ?5, "
                       "closes_min = ?6, stall_minor = ?7, other_minor = ?8, worked_min = ?9, note = ?10 "
                       "WHERE id = ?1",
                       fair->id, fair->name, fair->firstDay, fair->lastDay, fair->hours.opens,
                       fair->hours.closes, fair->stallCost, fair->otherCosts, fair->worked, fair->note);
        writer.describe(
            said("Fair {fair} changed: {changes}", {{"fair", wordsOf(*fair)}, {"changes", changes}}));
        writer.concerns(fair->id);
        return Done{};
    });
}

Result<Done> takeFairOffList(Shop& shop, FairId id, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        const auto fair = fairRow(connection, id);
        if (!fair.ok())
            return fair.error();
        if (const std::size_t orders = daysOfOrders(connection, *fair, now).size(); orders > 0)
            return fieldError("fair", said("{n} order was taken at {fair}; it stays in the list.|"
                                           "{n} orders were taken at {fair}; it stays in the list.",
                                           {{"n", orders}, {"fair", fair->name}}));
        connection.run("DELETE FROM fair WHERE id = ?1", id);
        writer.describe(said("Fair removed: {fair}", {{"fair", wordsOf(*fair)}}));
        writer.concerns(id);
        return Done{};
    });
}

} // namespace holdfast::db

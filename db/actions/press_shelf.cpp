// SPDX-License-Identifier: GPL-3.0-or-later
// Presses and the checks of their platens.
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/changed_fields.h"
#include "db/actions/parts.h"
#include "db/actions/press_actions.h"
#include "db/actions/rows.h"
#include "db/tables/fact_readers.h"

#include <algorithm>

namespace holdfast::db {
namespace {

Result<Done> checkPress(const Press& press) {
    const auto wrong = firstError({
        within(press.platenWidth.value, {.field = "platenWidth",
                                         .what = phrase("The platen’s width"),
                                         .least = 50,
                                         .most = 2000,
                                         .unit = " mm"}),
        within(press.platenHeight.value, {.field = "platenHeight",
                                          .what = phrase("The platen’s height"),
                                          .least = 50,
                                          .most = 2000,
                                          .unit = " mm"}),
        measuredWithin(press.heatsPerMinute, {.field = "heatsPerMinute",
                                              .what = phrase("The heating"),
                                              .least = 1,
                                              .most = 200,
                                              .unit = " °C a minute"}),
        measuredWithin(press.coolsPerMinute, {.field = "coolsPerMinute",
                                              .what = phrase("The cooling"),
                                              .least = 1,
                                              .most = 200,
                                              .unit = " °C a minute"}),
        measuredWithin(
            press.tolerance.value,
            {.field = "tolerance", .what = phrase("The tolerance"), .least = 1, .most = 30, .unit = " °C"}),
        measuredWithin(press.evenWithin.value, {.field = "evenWithin",
                                                .what = phrase("The spread still even"),
                                                .least = 1,
                                                .most = 60,
                                                .unit = " °C"}),
        within(press.checkEvery.count(),
               {.field = "checkEvery", .what = phrase("The days between checks"), .least = 1, .most = 3650}),
    });
    return wrong ? Result<Done>{*wrong} : Result<Done>{Done{}};
}

Result<Done> checkReadings(Celsius set, const std::vector<Celsius>& readings) {
    if (auto checked = measuredWithin(
            set.value,
            {.field = "set", .what = phrase("The set temperature"), .least = 40, .most = 250, .unit = " °C"});
        !checked.ok())
        return checked;
    if (auto checked =
            within(static_cast<std::int64_t>(readings.size()),
                   {.field = "readings", .what = phrase("The number of readings"), .least = 1, .most = 25});
        !checked.ok())
        return checked;
    for (const Celsius reading : readings)
        if (auto checked = measuredWithin(
                reading.value,
                {.field = "readings", .what = phrase("A reading"), .least = -20, .most = 300, .unit = " °C"});
            !checked.ok())
            return checked;
    return Done{};
}

// Its name, trimmed and no other press's, where all else of it is within its limits.
Result<std::string> soundName(Connection& connection, const Press& press) {
    auto name = typedText(press.name, {.field = "name", .what = phrase("The press’s name"), .most = 60});
    if (!name.ok())
        return name.error();
    if (const auto checked = checkPress(press); !checked.ok())
        return checked.error();
    if (connection.number("SELECT COUNT(*) FROM press WHERE name = ?1 COLLATE NOCASE AND id <> ?2", *name,
                          press.id) > 0)
        return fieldError("name", said("There is a press “{press}” already; give this one another name.",
                                       {{"press", *name}}));
    return name;
}

// What is under way on it is finished there.
Sentence underWayOn(Connection& connection, PressId press) {
    const std::int64_t garments = connection.number(
        "SELECT COUNT(DISTINCT garment_id) FROM press_step WHERE press_id = ?1 AND finished_at IS NULL",
        press);
    return garments > 0
               ? said("{n} garment is finished on it|{n} garments are finished on it", {{"n", garments}})
               : Sentence{};
}

std::vector<Sentence> pressChanges(Connection& connection, const Press& before, const Press& after) {
    const auto rate = [](double degrees) {
        return said("{degrees} °C a minute", {{"degrees", Decimal{degrees}}});
    };
    ChangedFields changes;
    changes.note("name", before.name, after.name);
    changes.note("platen_width_mm", before.platenWidth, after.platenWidth);
    changes.note("platen_height_mm", before.platenHeight, after.platenHeight);
    changes.noteYesNo("has_small_platen", before.hasSmallPlaten, after.hasSmallPlaten);
    changes.note("heats_per_minute", rate(before.heatsPerMinute), rate(after.heatsPerMinute));
    changes.note("cools_per_minute", rate(before.coolsPerMinute), rate(after.coolsPerMinute));
    changes.note("tolerance_c", before.tolerance, after.tolerance);
    changes.note("even_within_c", before.evenWithin, after.evenWithin);
    changes.note("check_every_days", daysWords(before.checkEvery.count()),
                 daysWords(after.checkEvery.count()));
    changes.noteRetired(before.isRetired, after.isRetired, underWayOn(connection, after.id));
    return changes.words();
}

} // namespace

Result<PressId> addPress(Shop& shop, const Press& press) {
    return shop.act([&](Writer& writer) { return addPress(writer, press); });
}

Result<PressId> addPress(Writer& writer, const Press& press) {
    const auto name = soundName(writer.connection(), press);
    if (!name.ok())
        return name.error();
    const auto id = writer.newId<PressId>();
    writer.connection().run(
        "INSERT INTO press (id, name, platen_width_mm, platen_height_mm, has_small_platen, "
        "heats_per_minute, cools_per_minute, tolerance_c, even_within_c, check_every_days) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)",
        id, *name, press.platenWidth, press.platenHeight, press.hasSmallPlaten, press.heatsPerMinute,
        press.coolsPerMinute, press.tolerance, press.evenWithin, press.checkEvery);
    writeRetired(writer.connection(), "press", id, press.isRetired, writer.now());
    writer.describe(said("Press {press} set up", {{"press", *name}}));
    writer.concerns(id);
    return id;
}

Result<Done> changePress(Shop& shop, const Press& press) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        UnreadFacts unread;
        const std::vector<Press> presses = readPresses(writer.connection(), unread);
        const auto before = std::ranges::find(presses, press.id, &Press::id);
        if (before == presses.end())
            return fieldError("press", said("The shop has no such {what} any more.", {{"what", "press"}}));
        const auto name = soundName(writer.connection(), press);
        if (!name.ok())
            return name.error();
        Press after = press;
        after.name = *name;
        const std::vector<Sentence> changes = pressChanges(writer.connection(), *before, after);
        if (changes.empty())
            return Done{};
        writer.connection().run(
            "UPDATE press SET name = ?2, platen_width_mm = ?3, platen_height_mm = ?4, has_small_platen = ?5, "
            "heats_per_minute = ?6, cools_per_minute = ?7, tolerance_c = ?8, even_within_c = ?9, "
            "check_every_days = ?10 WHERE id = ?1",
            press.id, *name, press.platenWidth, press.platenHeight, press.hasSmallPlaten,
            press.heatsPerMinute, press.coolsPerMinute, press.tolerance, press.evenWithin, press.checkEvery);
        writeRetired(writer.connection(), "press", press.id, press.isRetired, writer.now());
        writer.describe(said("Press {press} changed: {changes}", {{"press", *name}, {"changes", changes}}));
        writer.concerns(press.id);
        return Done{};
    });
}

Result<Done> recordPressCheck(Shop& shop, PressId press, Celsius set, const std::vector<Celsius>& readings,
                              const std::string& by) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto who = typedText(by, {.field = "by", .what = phrase("Who checked it")});
        if (!who.ok())
            return who.error();
        if (const auto checked = checkReadings(set, readings); !checked.ok())
            return checked.error();
        const auto name = pressName(writer.connection(), press);
        if (!name.ok())
            return name.error();
        const auto check = writer.newId<RowId>();
        writer.connection().run("INSERT INTO press_check (id, press_id, at, set_c, by_whom) "
                                "VALUES (?1, ?2, ?3, ?4, ?5)",
                                check, press, writer.now(), set, *who);
        for (std::size_t spot = 0; spot < readings.size(); ++spot)
            writer.connection().run(
                "INSERT INTO press_check_reading (check_id, spot, celsius) VALUES (?1, ?2, ?3)", check,
                spot + 1, readings[spot]);
        writer.describe(
            said("Press {press} checked at {set} by {who}", {{"press", *name}, {"set", set}, {"who", *who}}));
        writer.concerns(press);
        return Done{};
    });
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// Lines of presses and of fairs.
#include "db/actions/parts.h"
#include "db/csv/import_kinds.h"

#include <charconv>

namespace holdfast::db {

namespace {

// "10:30"; 24:00 ends a day.
Minutes timeOf(ImportRow& row, std::string_view heading) {
    const std::string text = row.text(heading);
    const auto colon = text.find(':');
    int hour = -1;
    int minute = -1;
    if (colon != std::string::npos) {
        const char* end = text.data() + text.size();
        const auto [hourEnd, hourCode] = std::from_chars(text.data(), text.data() + colon, hour);
        const auto [minuteEnd, minuteCode] = std::from_chars(text.data() + colon + 1, end, minute);
        if (hourEnd != text.data() + colon || minuteEnd != end || hourCode != std::errc{} ||
            minuteCode != std::errc{})
            hour = -1;
    }
    if (hour < 0 || hour > 24 || minute < 0 || minute > 59) {
        row.wrong(heading, said("write a time such as 10:30."));
        return Minutes{0};
    }
    return Hours{hour} + Minutes{minute};
}

} // namespace

Result<LineWas> importPress(ImportWork& work, ImportRow& row) {
    Press press;
    press.name = row.text("Press");
    if (work.writer.connection().number("SELECT COUNT(*) FROM press WHERE name = ?1 COLLATE NOCASE",
                                        press.name) > 0)
        return LineWas::Known;
    press.platenWidth = {row.whole("Platen width (mm)")};
    press.platenHeight = {row.whole("Platen height (mm)")};
    press.hasSmallPlaten = row.yesNo("Small platen", press.hasSmallPlaten);
    press.heatsPerMinute = row.number("Heats (°C a minute)", press.heatsPerMinute);
    press.coolsPerMinute = row.number("Cools (°C a minute)", press.coolsPerMinute);
    press.tolerance = {row.number("Tolerance (°C)", press.tolerance.value)};
    press.evenWithin = {row.number("Even within (°C)", press.evenWithin.value)};
    press.checkEvery = Days{row.whole("Checked every (days)", press.checkEvery.count())};
    press.isRetired = row.yesNo("Retired", false);
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    const auto added = addPress(work.writer, press);
    return added ? Result<LineWas>{LineWas::Added} : row.refused(added.error());
}

Result<LineWas> importFair(ImportWork& work, ImportRow& row) {
    Fair fair;
    fair.name = row.text("Fair");
    const auto first = row.day("First day");
    if (!first)
        row.wrong("First day", said("a day is needed, such as 2026-11-25."));
    fair.hours = {timeOf(row, "Opens"), timeOf(row, "Closes")};
    fair.stallCost = row.money("Stall");
    fair.otherCosts = row.money("Other costs");
    if (row.has("Worked (min)"))
        fair.worked = Minutes{row.whole("Worked (min)")};
    fair.note = row.text("Note");
    const auto last = row.day("Last day");
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    fair.firstDay = *first;
    fair.lastDay = last.value_or(*first);
    if (work.writer.connection().number(
            "SELECT COUNT(*) FROM fair WHERE name = ?1 COLLATE NOCASE AND first_day = ?2", fair.name,
            fair.firstDay) > 0)
        return LineWas::Known;
    const auto added = addFair(work.writer, fair);
    return added ? Result<LineWas>{LineWas::Added} : row.refused(added.error());
}

} // namespace holdfast::db

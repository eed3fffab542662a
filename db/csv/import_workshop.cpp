// SPDX-License-Identifier: GPL-3.0-or-later
// Lines of presses, of fairs and of settings.
#include "db/actions/parts.h"
#include "db/csv/import_kinds.h"
#include "db/tables/facts.h"
#include "db/tables/settings_rows.h"

#include <algorithm>
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

// "1500 Tee": an amount in its smallest coin and what it is for; nothing where it is not so.
struct ListedPrice {
    Money price;
    std::string what;
};
std::optional<ListedPrice> listedPrice(const std::string& value) {
    ListedPrice listed;
    const auto space = value.find(' ');
    if (space == std::string::npos)
        return std::nullopt;
    const auto [end, code] = std::from_chars(value.data(), value.data() + space, listed.price.minor);
    listed.what = value.substr(space + 1);
    return code == std::errc{} && end == value.data() + space && listed.price >= Money{}
               ? std::optional{listed}
               : std::nullopt;
}

LineWas addClosedDay(ShopSettings& settings, ImportRow& row) {
    const auto day = row.day("Value");
    if (!day)
        row.wrong("Value", said("a day is needed, such as 2026-11-25."));
    if (!day || std::ranges::find(settings.closedDays, *day) != settings.closedDays.end())
        return LineWas::Known;
    settings.closedDays.push_back(*day);
    return LineWas::Added;
}

LineWas addOtherHours(ShopSettings& settings, ImportRow& row) {
    const std::string value = row.text("Value");
    const auto space = std::min(value.find(' '), value.size());
    const auto day = parseIsoDate(std::string_view{value}.substr(0, space));
    const auto hours = hoursWritten(std::string_view{value}.substr(std::min(space + 1, value.size())));
    if (!day || !hours) {
        row.wrong("Value", said("write the day and its hours in minutes from midnight, such as "
                                "2026-11-25 540-1200."));
        return LineWas::Known;
    }
    const auto there = settings.otherHours.find(*day);
    if (there != settings.otherHours.end() && there->second == *hours)
        return LineWas::Known;
    settings.otherHours[*day] = *hours;
    return LineWas::Added;
}

LineWas addStylePrice(ImportWork& work, ImportRow& row) {
    const auto listed = listedPrice(row.text("Value"));
    if (!listed) {
        row.wrong("Value", said("write the price in its smallest coin and the style, such as 1500 Tee."));
        return LineWas::Known;
    }
    Query style = work.writer.connection().query("SELECT id FROM blank_style WHERE name = ?1 COLLATE NOCASE",
                                                 listed->what);
    if (!style.step()) {
        row.wrong("Value", said("the shop has no blank style “{style}”. Read in the blank styles first.",
                                {{"style", listed->what}}));
        return LineWas::Known;
    }
    auto& prices = work.settings->prices.stylePrices;
    const auto there = prices.find(style.id<BlankStyleId>(0));
    if (there != prices.end() && there->second == listed->price)
        return LineWas::Known;
    prices[style.id<BlankStyleId>(0)] = listed->price;
    return LineWas::Added;
}

LineWas addDecalPrice(ShopSettings& settings, ImportRow& row) {
    const auto listed = listedPrice(row.text("Value"));
    DecalPrice price;
    const char* end = listed ? listed->what.data() + listed->what.size() : nullptr;
    if (!listed || std::from_chars(listed->what.data(), end, price.upTo.value).ptr != end) {
        row.wrong("Value", said("write the price in its smallest coin and the longer side in mm, such as "
                                "450 300."));
        return LineWas::Known;
    }
    price.price = listed->price;
    auto& prices = settings.prices.decalPrices;
    const auto there = std::ranges::find(prices, price.upTo, &DecalPrice::upTo);
    if (there != prices.end() && *there == price)
        return LineWas::Known;
    if (there != prices.end())
        *there = price;
    else
        prices.insert(std::ranges::upper_bound(prices, price.upTo, {}, &DecalPrice::upTo), price);
    return LineWas::Added;
}

// One that has a row of its own in the shop file.
LineWas changeSetting(ShopSettings& settings, ImportRow& row) {
    const std::string name = row.text("Setting");
    SettingRows rows = settingRows(settings);
    const auto there = rows.find(name);
    if (there == rows.end()) {
        row.wrong("Setting", said("there is no setting “{setting}”.", {{"setting", name}}));
        return LineWas::Known;
    }
    const std::string before = there->second;
    // One that is a list ends with a line break, which is not in a field's text.
    for (const std::string& value : {row.text("Value"), row.text("Value") + "\n"}) {
        UnreadFacts unread;
        there->second = value;
        ShopSettings read = settingsFrom(rows, unread);
        if (value == before)
            return LineWas::Known;
        if (!unread.empty())
            continue;
        read.closedDays = settings.closedDays;
        read.otherHours = settings.otherHours;
        read.prices.stylePrices = settings.prices.stylePrices;
        read.prices.decalPrices = settings.prices.decalPrices;
        settings = std::move(read);
        return LineWas::Added;
    }
    row.wrong("Value", said("“{typed}” is not a value of the setting “{setting}”.",
                            {{"typed", row.text("Value")}, {"setting", settingLabel(name)}}));
    return LineWas::Known;
}

} // namespace

Result<LineWas> importSetting(ImportWork& work, ImportRow& row) {
    if (!work.settings)
        work.settings = loadSettings(work.writer.connection());
    const std::string name = row.text("Setting");
    const LineWas was = name == "closed-day"    ? addClosedDay(*work.settings, row)
                        : name == "other-hours" ? addOtherHours(*work.settings, row)
                        : name == "style-price" ? addStylePrice(work, row)
                        : name == "decal-price" ? addDecalPrice(*work.settings, row)
                                                : changeSetting(*work.settings, row);
    if (row.whatIsWrong())
        return *row.whatIsWrong();
    return was;
}

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

#include "db/tables/settings_rows.h"

#include "db/sqlite/failure.h"
#include "db/tables/facts.h"

#include <sqlite3.h>

#include <charconv>

namespace holdfast::db {

namespace {

constexpr const char* kWeekdays[] = {"sunday",   "monday", "tuesday", "wednesday",
                                     "thursday", "friday", "saturday"};

SqliteFailure unreadable(const std::string& name, const std::string& value) {
    return SqliteFailure(SQLITE_CORRUPT, "The setting " + name + " reads “" + value + "”.");
}

// Goes once over every setting, to write or to read it: the list of names stands in one place.
template <class Settings, class Each>
void eachSetting(Settings& settings, Each&& each) {
    each("shop-name", settings.shopName);
    each("fair-name", settings.fairName);
    each("collect-at", settings.collectAt);
    each("when-edge-lifts", settings.whenEdgeLifts);
    each("currency-code", settings.currency.code);
    each("currency-sign", settings.currency.sign);
    each("currency-exponent", settings.currency.exponent);
    each("deposit-percent", settings.depositPercent);
    each("deposit-holds", settings.depositHolds);
    each("minute-rate", settings.minuteRate.minor);
    each("overhead-per-garment", settings.overheadPerGarment.minor);
    each("margin-percent", settings.marginPercent);
    each("price-point", settings.pricePoint.minor);
    each("plan-margin-percent", settings.planMarginPercent);
    each("washer-holds-g", settings.washerHolds.value);
    each("wash-takes-min", settings.washTakes);
    each("drying-takes-h", settings.dryingTakes);
    each("shrink-limit-percent", settings.shrinkLimitPercent);
    each("keeping-percent", settings.keepingPercent);
    each("blank-lead-days", settings.blankLeadTime);
    each("film-lead-days", settings.filmLeadTime);
    each("cut-takes-min", settings.cutTakes);
    each("weeding-takes-s", settings.weedingTakes);
    each("decal-gap-mm", settings.decalGap.value);
    each("edge-margin-mm", settings.edgeMargin.value);
    each("film-waste-percent", settings.filmWastePercent);
    each("rest-before-wash-h", settings.restBeforeWash);
    each("better-rest-h", settings.betterRest);
    each("readings-stale-h", settings.readingsGoStaleAfter);
    for (std::size_t day = 0; day < settings.week.size(); ++day)
        each(std::string("hours-") + kWeekdays[day], settings.week[day]);
}

template <class Duration>
concept IsDuration = requires(const Duration& duration) {
    duration.count();
};

std::string written(const std::string& text) {
    return text;
}
std::string written(bool truth) {
    return truth ? "yes" : "no";
}
std::string written(int number) {
    return std::to_string(number);
}
std::string written(std::int64_t number) {
    return std::to_string(number);
}
std::string written(double number) {
    char text[32];
    const auto end = std::to_chars(text, text + sizeof text, number).ptr;
    return std::string(text, end);
}
template <IsDuration Duration>
std::string written(const Duration& duration) {
    return std::to_string(duration.count());
}
std::string written(const std::optional<OpeningHours>& hours) {
    return hours ? std::to_string(hours->opens.count()) + "-" + std::to_string(hours->closes.count())
                 : "closed";
}

template <class Number>
bool readFrom(std::string_view text, Number& number) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc{} && end == text.data() + text.size();
}
bool readFrom(std::string_view text, std::string& out) {
    out = text;
    return true;
}
bool readFrom(std::string_view text, bool& truth) {
    truth = text == "yes";
    return text == "yes" || text == "no";
}
template <IsDuration Duration>
bool readFrom(std::string_view text, Duration& duration) {
    std::int64_t count = 0;
    const bool good = readFrom(text, count);
    duration = Duration{count};
    return good;
}
bool readFrom(std::string_view text, std::optional<OpeningHours>& hours) {
    if (text == "closed") {
        hours.reset();
        return true;
    }
    const auto dash = text.find('-');
    hours.emplace();
    return dash != std::string_view::npos && readFrom(text.substr(0, dash), hours->opens) &&
           readFrom(text.substr(dash + 1), hours->closes);
}

} // namespace

SettingRows settingRows(const ShopSettings& settings) {
    SettingRows rows;
    eachSetting(settings, [&](const std::string& name, const auto& value) { rows[name] = written(value); });
    return rows;
}

ShopSettings settingsFrom(const SettingRows& rows) {
    ShopSettings settings;
    eachSetting(settings, [&](const std::string& name, auto& value) {
        if (const auto row = rows.find(name); row != rows.end() && !readFrom(row->second, value))
            throw unreadable(name, row->second);
    });
    return settings;
}

ShopSettings loadSettings(Connection& connection) {
    SettingRows rows;
    {
        Query settings{connection, "SELECT name, value FROM setting"};
        while (settings.step())
            rows[settings.text(0)] = settings.text(1);
    }
    ShopSettings settings = settingsFrom(rows);
    Query days{connection, "SELECT day FROM closed_day ORDER BY day"};
    while (days.step())
        settings.closedDays.push_back(days.date(0));
    return settings;
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/settings_rows.h"

#include "db/tables/fact_row.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <charconv>
#include <type_traits>

namespace holdfast::db {

namespace {

constexpr const char* kWeekdays[] = {"sunday",   "monday", "tuesday", "wednesday",
                                     "thursday", "friday", "saturday"};

constexpr Phrase kHoursInWords[] = {phrase("hours on Sunday"),   phrase("hours on Monday"),
                                    phrase("hours on Tuesday"),  phrase("hours on Wednesday"),
                                    phrase("hours on Thursday"), phrase("hours on Friday"),
                                    phrase("hours on Saturday")};

// What the calculation can take; a form asks for less (see checkNumbers in db/actions/shop_actions.cpp).
constexpr std::int64_t kMostOfAny = 1'000'000;
constexpr std::int64_t kMostMoney = 1'000'000'000'000;

struct Narrower {
    std::string_view name;
    std::int64_t least;
    std::int64_t most;
};
constexpr Narrower kNarrower[] = {{"currency-exponent", 0, 4},
                                  {"margin-percent", 0, 95},
                                  {"price-point", 1, kMostMoney},
                                  {"run-out-percent", kLeastRunOutPercent, kMostRunOutPercent}};

// Goes once over every setting with its name in the file and what people call it, to write or to read it.
template <class Settings, class Each>
void eachSetting(Settings& settings, Each&& each) {
    each("shop-name", phrase("shop’s name"), settings.shopName);
    each("fair-name", phrase("where orders are taken"), settings.fairName);
    each("collect-at", phrase("where orders are collected"), settings.collectAt);
    each("when-edge-lifts", phrase("what to do when an edge lifts"), settings.whenEdgeLifts);
    each("shop-address", phrase("shop’s address"), settings.address);
    each("invoice-lines", phrase("lines at the foot of invoices"), settings.invoiceLines);
    each("currency-code", phrase("currency"), settings.currency.code);
    each("currency-sign", phrase("currency sign"), settings.currency.sign);
    each("currency-exponent", phrase("decimals of the currency"), settings.currency.exponent);
    each("deposit-percent", phrase("deposit asked"), settings.depositPercent);
    each("deposit-holds", phrase("a short deposit holds the work"), settings.depositHolds);
    each("minute-rate", phrase("a minute of work"), settings.minuteRate.minor);
    each("overhead-per-garment", phrase("overhead for each garment"), settings.overheadPerGarment.minor);
    each("margin-percent", phrase("margin"), settings.marginPercent);
    each("price-point", phrase("prices rounded up to"), settings.pricePoint.minor);
    each("priced-by", phrase("how prices are made"), settings.prices.by);
    each("mark-up-percent", phrase("what is put on the cost"), settings.prices.markUpPercent);
    each("less-for-many", phrase("prices for many"), settings.prices.forMany);
    each("usual-extras", phrase("usual extras"), settings.prices.extras);
    each("rush-within-days", phrase("what counts as a rush"), settings.prices.rushWithin);
    each("rush-more", phrase("rush price"), settings.prices.rushMore);
    each("quotation-days", phrase("how long a quotation is valid"), settings.prices.quotationFor);
    each("tax-kind", phrase("way of taxing"), settings.prices.tax.kind);
    each("tax-rate", phrase("rate of tax"), settings.prices.tax.rate);
    each("taxed-by", phrase("what the tax is rounded for"), settings.prices.tax.by);
    each("tax-rounding", phrase("rounding of the tax"), settings.prices.tax.rounding);
    each("tax-name", phrase("name of the tax"), settings.prices.taxName);
    each("tax-number", phrase("tax number"), settings.prices.taxNumber);
    each("plan-margin-percent", phrase("allowance in promises"), settings.planMarginPercent);
    each("washer-holds-g", phrase("load of the washer"), settings.washerHolds.value);
    each("wash-takes-min", phrase("time for a wash"), settings.washTakes);
    each("drying-takes-h", phrase("time for drying"), settings.dryingTakes);
    each("shrink-limit-percent", phrase("shrinking allowed"), settings.shrinkLimitPercent);
    each("keeping-percent", phrase("cost of carrying an unsold blank"), settings.keepingPercent);
    each("blank-lead-days", phrase("days until blanks arrive"), settings.blankLeadTime);
    each("film-lead-days", phrase("days until film arrives"), settings.filmLeadTime);
    each("run-out-percent", phrase("chance of running out"), settings.runOutPercent);
    each("bought-to-last-days", phrase("how long what is bought lasts"), settings.boughtToLast);
    each("cut-takes-min", phrase("time for a cut"), settings.cutTakes);
    each("weeding-takes-s", phrase("weeding a decal"), settings.weedingTakes);
    each("decal-gap-mm", phrase("gap between decals"), settings.decalGap.value);
    each("edge-margin-mm", phrase("margin at the film’s edge"), settings.edgeMargin.value);
    each("film-waste-percent", phrase("film round a decal"), settings.filmWastePercent);
    each("most-over-under-heat-s", phrase("longest time over under heat"), settings.mostOverUnderHeat);
    each("rest-before-wash-h", phrase("rest before a wash"), settings.restBeforeWash);
    each("better-rest-h", phrase("better rest before a wash"), settings.betterRest);
    each("readings-stale-h", phrase("how long a reading is valid"), settings.readingsGoStaleAfter);
    for (std::size_t day = 0; day < settings.week.size(); ++day)
        each(std::string("hours-") + kWeekdays[day], kHoursInWords[day], settings.week[day]);
}

template <class Choice>
concept IsChoice = std::is_enum_v<Choice>;

template <class Duration>
concept IsDuration = requires(const Duration& duration) { duration.count(); };

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
std::string written(Percentage share) {
    return std::to_string(share.hundredths);
}
template <IsChoice Choice>
std::string written(Choice choice) {
    return std::string{codeOf(choice)};
}
// A line each, the number first: "12 500", "250 Gift wrap".
std::string written(const std::vector<PriceForMany>& rules) {
    std::string text;
    for (const PriceForMany& rule : rules)
        text += std::to_string(rule.garments) + " " + written(rule.less) + "\n";
    return text;
}
std::string written(const std::vector<UsualExtra>& extras) {
    std::string text;
    for (const UsualExtra& extra : extras)
        text += std::to_string(extra.amount.minor) + " " + extra.words + "\n";
    return text;
}
std::string written(const std::optional<OpeningHours>& hours) {
    return hours ? std::to_string(hours->opens.count()) + "-" + std::to_string(hours->closes.count())
                 : "closed";
}

bool isWithin(std::int64_t number) {
    return number >= 0 && number <= kMostMoney;
}
bool isWithin(int number) {
    return number >= 0 && number <= kMostOfAny;
}
bool isWithin(double number) {
    return number >= 0 && number <= static_cast<double>(kMostOfAny);
}
bool isWithin(const std::string&) {
    return true;
}
bool isWithin(bool) {
    return true;
}
template <IsDuration Duration>
bool isWithin(const Duration& duration) {
    return duration.count() >= 0 && duration.count() <= kMostOfAny;
}
bool isWithin(Percentage share) {
    return share >= Percentage{} && share <= kWholePercentage;
}
template <IsChoice Choice>
bool isWithin(Choice) {
    return true;
}
bool isWithin(const std::vector<PriceForMany>& rules) {
    return std::ranges::all_of(
        rules, [](const PriceForMany& rule) { return rule.garments > 0 && isWithin(rule.less); });
}
bool isWithin(const std::vector<UsualExtra>& extras) {
    return std::ranges::all_of(extras, [](const UsualExtra& extra) {
        return extra.amount.minor >= -kMostMoney && extra.amount.minor <= kMostMoney && !extra.words.empty();
    });
}
bool isWithin(const std::optional<OpeningHours>& hours) {
    return !hours ||
           (hours->opens >= Minutes{0} && hours->opens < hours->closes && hours->closes <= Hours{24});
}

template <class Value>
bool isWithinOf(std::string_view name, const Value& value) {
    if constexpr (std::is_integral_v<Value> && !std::is_same_v<Value, bool>)
        for (const Narrower& narrower : kNarrower)
            if (narrower.name == name)
                return value >= narrower.least && value <= narrower.most;
    return isWithin(value);
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
bool readFrom(std::string_view text, Percentage& share) {
    return readFrom(text, share.hundredths);
}
template <IsChoice Choice>
bool readFrom(std::string_view text, Choice& choice) {
    const auto known = knownCode<Choice>(text);
    choice = known.value_or(choice);
    return known.has_value();
}
bool readFrom(std::string_view text, PriceForMany& rule) {
    const auto space = text.find(' ');
    return space != std::string_view::npos && readFrom(text.substr(0, space), rule.garments) &&
           readFrom(text.substr(space + 1), rule.less);
}
bool readFrom(std::string_view text, UsualExtra& extra) {
    const auto space = text.find(' ');
    return space != std::string_view::npos && readFrom(text.substr(0, space), extra.amount.minor) &&
           readFrom(text.substr(space + 1), extra.words);
}
template <class Line>
bool readFrom(std::string_view text, std::vector<Line>& lines) {
    lines.clear();
    while (!text.empty()) {
        const auto end = text.find('\n');
        if (end == std::string_view::npos || !readFrom(text.substr(0, end), lines.emplace_back()))
            return false;
        text.remove_prefix(end + 1);
    }
    return true;
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
    eachSetting(settings, [&](const std::string& name, const Sentence&, const auto& value) {
        rows[name] = written(value);
    });
    return rows;
}

Sentence settingLabel(std::string_view name) {
    Sentence label = said("a setting of another version");
    const ShopSettings settings;
    eachSetting(settings, [&](const std::string& each, const Sentence& words, const auto&) {
        if (each == name)
            label = words;
    });
    return label;
}

std::optional<OpeningHours> hoursWritten(std::string_view text) {
    std::optional<OpeningHours> hours;
    return readFrom(text, hours) && isWithin(hours) ? hours : std::nullopt;
}

ShopSettings settingsFrom(const SettingRows& rows, UnreadFacts& unread) {
    ShopSettings settings;
    eachSetting(settings, [&](const std::string& name, const Sentence&, auto& value) {
        const auto row = rows.find(name);
        if (row == rows.end())
            return;
        const auto usual = value;
        if (readFrom(row->second, value) && isWithinOf(name, value))
            return;
        value = usual;
        unread.add("setting", name, UnreadValue{"value", row->second});
    });
    return settings;
}

ShopSettings loadSettings(Connection& connection) {
    UnreadFacts unread;
    return loadSettings(connection, unread);
}

ShopSettings loadSettings(Connection& connection, UnreadFacts& unread) {
    SettingRows rows;
    {
        Query settings{connection, "SELECT name, value FROM setting"};
        while (settings.step())
            rows[settings.text(0)] = settings.text(1);
    }
    ShopSettings settings = settingsFrom(rows, unread);
    Query days{connection, "SELECT day FROM closed_day ORDER BY day"};
    readFacts(days, unread, "closed_day",
              [&](const FactRow& row) { settings.closedDays.push_back(row.date(0)); });
    Query others{connection, "SELECT day, opens, closes FROM other_hours ORDER BY day"};
    readFacts(others, unread, "other_hours", [&](const FactRow& row) {
        const auto minutes = [&](int column) { return Minutes{row.number(column, 0, kMinutesOfADay)}; };
        settings.otherHours.emplace(row.date(0), OpeningHours{minutes(1), minutes(2)});
    });
    Query styles{connection, "SELECT style_id, minor FROM style_price ORDER BY style_id"};
    readFacts(styles, unread, "style_price", [&](const FactRow& row) {
        settings.prices.stylePrices.emplace(row.id<BlankStyleId>(0), row.money(1));
    });
    Query decals{connection, "SELECT up_to_mm, minor FROM decal_price ORDER BY up_to_mm"};
    readFacts(decals, unread, "decal_price", [&](const FactRow& row) {
        settings.prices.decalPrices.push_back({row.extent(0), row.money(1)});
    });
    return settings;
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/shop_actions.h"

#include "core/orders/price_rules_check.h"
#include "core/trade/limits.h"
#include "db/actions/rows.h"
#include "db/tables/facts.h"
#include "db/tables/settings_rows.h"

#include <algorithm>
#include <vector>

namespace holdfast::db {
namespace {

// Settings as they may be written: texts trimmed.
Result<ShopSettings> withSoundTexts(const ShopSettings& typed) {
    ShopSettings settings = typed;
    struct Typed {
        std::string* text;
        TextLimits limits;
    };
    const Typed texts[] = {
        {&settings.shopName, {.field = "shopName", .what = phrase("The shop’s name"), .most = 60}},
        {&settings.fairName,
         {.field = "fairName", .what = phrase("The fair’s name"), .least = 0, .most = 60}},
        {&settings.collectAt,
         {.field = "collectAt", .what = phrase("Where orders are collected"), .least = 0, .most = 100}},
        {&settings.whenEdgeLifts,
         {.field = "whenEdgeLifts",
          .what = phrase("What to do when an edge lifts"),
          .least = 0,
          .most = 160}},
        {&settings.address,
         {.field = "address", .what = phrase("The shop’s address"), .least = 0, .most = 200}},
        {&settings.invoiceLines,
         {.field = "invoiceLines",
          .what = phrase("What is at the foot of invoices"),
          .least = 0,
          .most = 400}},
        {&settings.prices.taxName,
         {.field = "taxName", .what = phrase("The tax’s name"), .least = 0, .most = 20}},
        {&settings.prices.taxNumber,
         {.field = "taxNumber", .what = phrase("The tax number"), .least = 0, .most = 40}},
        {&settings.currency.code,
         {.field = "currency", .what = phrase("The currency’s code"), .least = 3, .most = 3}},
        {&settings.currency.sign,
         {.field = "currency", .what = phrase("The currency’s sign"), .least = 1, .most = 5}},
    };
    for (const auto& [text, limits] : texts) {
        auto sound = typedText(*text, limits);
        if (!sound.ok())
            return sound.error();
        *text = std::move(sound).value();
    }
    const auto isCapital = [](char letter) { return letter >= 'A' && letter <= 'Z'; };
    if (!std::ranges::all_of(settings.currency.code, isCapital))
        return fieldError("currency",
                          said("The currency’s code must be three capital letters, such as GBP."));
    return settings;
}

Result<Done> checkNumbers(const ShopSettings& settings) {
    const auto wrong = firstError({
        within(settings.currency.exponent,
               {.field = "currency", .what = phrase("The currency’s decimals"), .least = 0, .most = 4}),
        within(settings.depositPercent, {.field = "depositPercent",
                                         .what = phrase("The deposit"),
                                         .least = 0,
                                         .most = 100,
                                         .unit = " %"}),
        within(
            settings.minuteRate.minor,
            {.field = "minuteRate", .what = phrase("The rate of a minute"), .least = 0, .most = 1'000'000}),
        within(
            settings.overheadPerGarment.minor,
            {.field = "overheadPerGarment", .what = phrase("The overhead"), .least = 0, .most = 100'000'000}),
        within(
            settings.marginPercent,
            {.field = "marginPercent", .what = phrase("The margin"), .least = 0, .most = 95, .unit = " %"}),
        within(settings.pricePoint.minor,
               {.field = "pricePoint", .what = phrase("The price point"), .least = 1, .most = 100'000'000}),
        within(settings.planMarginPercent, {.field = "planMarginPercent",
                                            .what = phrase("The margin of the plan"),
                                            .least = 0,
                                            .most = 200,
                                            .unit = " %"}),
        within(settings.washerHolds.value, {.field = "washerHolds",
                                            .what = phrase("A full load"),
                                            .least = 100,
                                            .most = 100'000,
                                            .unit = " g"}),
        within(settings.washTakes.count(),
               {.field = "washTakes", .what = phrase("A wash"), .least = 1, .most = 1440, .unit = " min"}),
        within(settings.dryingTakes.count(),
               {.field = "dryingTakes", .what = phrase("Drying"), .least = 0, .most = 168, .unit = " h"}),
        measuredWithin(settings.shrinkLimitPercent, {.field = "shrinkLimitPercent",
                                                     .what = phrase("The shrinkage"),
                                                     .least = 0,
                                                     .most = 50,
                                                     .unit = " %"}),
        within(settings.keepingPercent, {.field = "keepingPercent",
                                         .what = phrase("The cost of a blank that comes home"),
                                         .least = 0,
                                         .most = 100,
                                         .unit = " %"}),
        within(settings.blankLeadTime.count(), {.field = "blankLeadTime",
                                                .what = phrase("The wait for blanks"),
                                                .least = 0,
                                                .most = 365,
                                                .unit = " days"}),
        within(settings.filmLeadTime.count(), {.field = "filmLeadTime",
                                               .what = phrase("The wait for film"),
                                               .least = 0,
                                               .most = 365,
                                               .unit = " days"}),
        within(settings.runOutPercent, {.field = "runOutPercent",
                                        .what = phrase("The chance of running out"),
                                        .least = kLeastRunOutPercent,
                                        .most = kMostRunOutPercent,
                                        .unit = " %"}),
        within(settings.boughtToLast.count(), {.field = "boughtToLast",
                                               .what = phrase("How long what is bought lasts"),
                                               .least = 0,
                                               .most = 365,
                                               .unit = " days"}),
        within(settings.cutTakes.count(),
               {.field = "cutTakes", .what = phrase("A cut"), .least = 0, .most = 240, .unit = " min"}),
        within(settings.weedingTakes.count(), {.field = "weedingTakes",
                                               .what = phrase("Weeding a decal"),
                                               .least = 0,
                                               .most = 3600,
                                               .unit = " s"}),
        within(settings.decalGap.value, {.field = "decalGap",
                                         .what = phrase("The gap between decals"),
                                         .least = 0,
                                         .most = 100,
                                         .unit = " mm"}),
        within(settings.edgeMargin.value, {.field = "edgeMargin",
                                           .what = phrase("The margin at the edge"),
                                           .least = 0,
                                           .most = 100,
                                           .unit = " mm"}),
        within(settings.filmWastePercent, {.field = "filmWastePercent",
                                           .what = phrase("Film round a decal"),
                                           .least = 0,
                                           .most = 500,
                                           .unit = " %"}),
        within(settings.mostOverUnderHeat.count(), {.field = "mostOverUnderHeat",
                                                    .what = phrase("The time over under heat"),
                                                    .least = 1,
                                                    .most = 600,
                                                    .unit = " s"}),
        within(settings.restBeforeWash.count(), {.field = "restBeforeWash",
                                                 .what = phrase("The rest before a wash"),
                                                 .least = 0,
                                                 .most = 336,
                                                 .unit = " h"}),
        within(settings.betterRest.count(), {.field = "betterRest",
                                             .what = phrase("The better rest"),
                                             .least = 0,
                                             .most = 336,
                                             .unit = " h"}),
        within(settings.readingsGoStaleAfter.count(), {.field = "readingsGoStaleAfter",
                                                       .what = phrase("The time a reading counts"),
                                                       .least = 1,
                                                       .most = 8784,
                                                       .unit = " h"}),
        within(static_cast<std::int64_t>(settings.otherHours.size()),
               {.field = "otherHours",
                .what = phrase("The number of days with other hours"),
                .least = 0,
                .most = 3660}),
        within(
            static_cast<std::int64_t>(settings.closedDays.size()),
            {.field = "closedDays", .what = phrase("The number of closed days"), .least = 0, .most = 3660}),
    });
    if (wrong)
        return *wrong;
    if (settings.betterRest < settings.restBeforeWash)
        return fieldError("betterRest",
                          said("The better rest must be no shorter than the rest before a wash."));
    return Done{};
}

bool areHours(const OpeningHours& hours) {
    return hours.opens >= Minutes{0} && hours.closes <= Hours{24} && hours.opens < hours.closes;
}

Result<Done> checkDays(const ShopSettings& settings) {
    for (const auto& hours : settings.week)
        if (hours && !areHours(*hours))
            return fieldError("week",
                              said("The shop must open before it closes, both between 00:00 and 24:00."));
    const auto isDay = [](LocalDate day) {
        return day >= localDate(2000, 1, 1) && day <= localDate(2200, 1, 1);
    };
    if (!std::ranges::all_of(settings.closedDays, isDay))
        return fieldError("closedDays", said("A closed day must lie between 2000 and 2200."));
    for (const auto& [day, hours] : settings.otherHours) {
        if (!isDay(day))
            return fieldError("otherHours", said("A day of other hours must lie between 2000 and 2200."));
        if (!areHours(hours))
            return fieldError(
                "otherHours",
                said("On {day} the shop must open before it closes, both between 00:00 and 24:00.",
                     {{"day", day}}));
    }
    return Done{};
}

// The currency of orders that were taken cannot change under them: amounts are kept in its smallest coin.
Result<Done> checkCurrency(Connection& connection, const Currency& before, const Currency& after) {
    if (before.exponent == after.exponent ||
        connection.number("SELECT EXISTS (SELECT 1 FROM shop_order)") == 0)
        return Done{};
    return fieldError("currency",
                      said("Orders were taken already; the currency’s decimals can no longer change."));
}

class SettingsChange {
public:
    SettingsChange(Connection& connection, const ShopSettings& before, const ShopSettings& after)
        : m_connection(connection)
        , m_before(before)
        , m_after(after) {}

    void write() {
        const SettingRows before = settingRows(m_before);
        for (const auto& [name, value] : settingRows(m_after)) {
            if (before.at(name) == value)
                continue;
            m_connection.run("INSERT INTO setting (name, value) VALUES (?1, ?2) "
                             "ON CONFLICT (name) DO UPDATE SET value = excluded.value",
                             name, value);
            m_changed.push_back(settingLabel(name));
        }
        writeClosedDays();
        writeOtherHours();
        writeStylePrices();
        writeDecalPrices();
    }

    Sentence title() const {
        if (m_changed.size() == 1 && m_before.fairName != m_after.fairName)
            return m_after.fairName.empty()
                       ? said("Orders are taken at the workshop again")
                       : said("Orders are taken at {place}", {{"place", m_after.fairName}});
        if (m_changed.size() == 1 && m_days == 1)
            return hoursOfDay();
        constexpr std::size_t kMostNamed = 3;
        if (m_changed.size() <= kMostNamed)
            return said("Settings changed: {settings}", {{"settings", m_changed}});
        const std::vector<Sentence> named{m_changed.begin(), m_changed.begin() + kMostNamed};
        return said("Settings changed: {settings} and {n} more",
                    {{"settings", named}, {"n", m_changed.size() - kMostNamed}});
    }

private:
    void writeClosedDays() {
        const auto sorted = [](std::vector<LocalDate> days) {
            std::ranges::sort(days);
            days.erase(std::unique(days.begin(), days.end()), days.end());
            return days;
        };
        const auto before = sorted(m_before.closedDays);
        const auto after = sorted(m_after.closedDays);
        if (before == after)
            return;
        for (const LocalDate day : before)
            if (!std::ranges::binary_search(after, day))
                m_connection.run("DELETE FROM closed_day WHERE day = ?1", day);
        for (const LocalDate day : after)
            if (!std::ranges::binary_search(before, day))
                m_connection.run("INSERT INTO closed_day (day) VALUES (?1)", day);
        m_changed.push_back(phrase("closed days"));
    }

    void writeOtherHours() {
        const auto& before = m_before.otherHours;
        const auto& after = m_after.otherHours;
        for (const auto& [day, hours] : before)
            if (!after.contains(day)) {
                m_connection.run("DELETE FROM other_hours WHERE day = ?1", day);
                noteDay(day);
            }
        for (const auto& [day, hours] : after)
            if (const auto was = before.find(day); was == before.end() || was->second != hours) {
                m_connection.run(
                    "INSERT INTO other_hours (day, opens, closes) VALUES (?1, ?2, ?3) "
                    "ON CONFLICT (day) DO UPDATE SET opens = excluded.opens, closes = excluded.closes",
                    day, hours.opens.count(), hours.closes.count());
                noteDay(day);
            }
        if (m_days > 0)
            m_changed.push_back(phrase("hours of single days"));
    }

    void noteDay(LocalDate day) {
        m_day = day;
        ++m_days;
    }

    Sentence hoursOfDay() const {
        const auto hours = m_after.hoursOn(m_day);
        if (!hours)
            return said("Closed on {day}", {{"day", m_day}});
        return said("Open from {from} to {to} on {day}",
                    {{"from", TimeOfDay{LocalTime{m_day} + hours->opens}},
                     {"to", TimeOfDay{LocalTime{m_day} + hours->closes}},
                     {"day", m_day}});
    }

    void writeStylePrices() {
        const auto& before = m_before.prices.stylePrices;
        const auto& after = m_after.prices.stylePrices;
        if (before == after)
            return;
        for (const auto& [style, price] : before)
            if (!after.contains(style))
                m_connection.run("DELETE FROM style_price WHERE style_id = ?1", style);
        for (const auto& [style, price] : after)
            if (const auto was = before.find(style); was == before.end() || was->second != price)
                m_connection.run("INSERT INTO style_price (style_id, minor) VALUES (?1, ?2) "
                                 "ON CONFLICT (style_id) DO UPDATE SET minor = excluded.minor",
                                 style, price);
        m_changed.push_back(phrase("prices of styles"));
    }

    void writeDecalPrices() {
        const auto& before = m_before.prices.decalPrices;
        const auto& after = m_after.prices.decalPrices;
        if (before == after)
            return;
        for (const DecalPrice& was : before)
            if (std::ranges::find(after, was.upTo, &DecalPrice::upTo) == after.end())
                m_connection.run("DELETE FROM decal_price WHERE up_to_mm = ?1", was.upTo);
        for (const DecalPrice& now : after)
            if (std::ranges::find(before, now) == before.end())
                m_connection.run("INSERT INTO decal_price (up_to_mm, minor) VALUES (?1, ?2) "
                                 "ON CONFLICT (up_to_mm) DO UPDATE SET minor = excluded.minor",
                                 now.upTo, now.price);
        m_changed.push_back(phrase("prices of decals"));
    }

    Connection& m_connection;
    const ShopSettings& m_before;
    const ShopSettings& m_after;
    std::vector<Sentence> m_changed;
    LocalDate m_day{}; // the last of the days …
    int m_days = 0;    // … whose hours are changed
};

} // namespace

Result<Done> changeSettings(Shop& shop, const ShopSettings& settings) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto sound = withSoundTexts(settings);
        if (!sound.ok())
            return sound.error();
        if (const auto wrong = firstError(
                {checkNumbers(*sound), checkDays(*sound), checkPriceRules(sound->prices, sound->currency)}))
            return *wrong;
        UnreadFacts unread;
        const ShopSettings before = loadSettings(writer.connection(), unread);
        if (!unread.empty())
            return cannotBeRead(unread.named(writer.connection()).front());
        if (const auto same = checkCurrency(writer.connection(), before.currency, sound->currency);
            !same.ok())
            return same.error();
        SettingsChange change{writer.connection(), before, *sound};
        change.write();
        writer.describe(change.title());
        return Done{};
    });
}

} // namespace holdfast::db

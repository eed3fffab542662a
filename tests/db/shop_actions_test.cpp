// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/column_words.h"
#include "db/tables/settings_rows.h"
#include "tests/db/small_shop.h"

#include <limits>

namespace holdfast::db {
namespace {

using ShopActions = SmallShop;
using Doing = Result<Done>;

TEST_F(ShopActions, SettingsComeBackAsTheyWereChanged) {
    ShopSettings settings = loadSettings(connection());
    settings.shopName = "  Løft & Hem ";
    settings.fairName = "Saltmarsh Makers’ Market";
    settings.collectAt = " The Net Loft, 4 Creek Lane ";
    settings.currency = {"JPY", "¥", 0};
    settings.depositPercent = 30;
    settings.depositHolds = true;
    settings.minuteRate = {55};
    settings.marginPercent = 0;
    settings.week[0] = OpeningHours{Hours{10}, Hours{14}};
    settings.week[1].reset();
    settings.closedDays = {localDate(2026, 12, 25), localDate(2026, 12, 24), localDate(2026, 12, 25)};
    settings.shrinkLimitPercent = 3.5;
    settings.restBeforeWash = Hours{36};
    expectUndoable<Doing>(
        [&] { return changeSettings(shop(), settings); },
        "Settings changed: where orders are collected, currency, decimals of the currency and 12 more");
    settings.shopName = "Løft & Hem";
    settings.collectAt = "The Net Loft, 4 Creek Lane";
    settings.closedDays = {localDate(2026, 12, 24), localDate(2026, 12, 25)};
    EXPECT_EQ(loadSettings(connection()), settings);
}

TEST_F(ShopActions, OneSettingIsNamedInTheHistory) {
    ShopSettings settings = loadSettings(connection());
    settings.marginPercent = 50;
    expectUndoable<Doing>([&] { return changeSettings(shop(), settings); }, "Settings changed: margin");
    settings.fairName = "Creek Fair";
    expectUndoable<Doing>([&] { return changeSettings(shop(), settings); }, "Orders are taken at Creek Fair");
    settings.fairName = "";
    expectUndoable<Doing>([&] { return changeSettings(shop(), settings); },
                          "Orders are taken at the workshop again");
    settings.closedDays = {localDate(2026, 12, 24)};
    expectUndoable<Doing>([&] { return changeSettings(shop(), settings); }, "Settings changed: closed days");
}

// No name out of the file is read by a person: each setting and each column has words of its own.
TEST_F(ShopActions, EverySettingAndEveryColumnIsCalledInWords) {
    for (const auto& [name, value] : settingRows(ShopSettings{})) {
        const std::string label = settingLabel(name).english();
        EXPECT_FALSE(label.empty()) << name;
        EXPECT_EQ(label.find_first_of("-_"), std::string::npos) << name;
        EXPECT_NE(label, "a setting of another version") << name;
    }
    EXPECT_EQ(settingLabel("no-such"), "a setting of another version");
    Query columns{connection(),
                  "SELECT tables.name, columns.name FROM pragma_table_list AS tables, "
                  "pragma_table_info(tables.name) AS columns WHERE tables.schema = 'main' "
                  "AND tables.type = 'table' AND columns.pk = 0 AND tables.name NOT LIKE 'sqlite%' "
                  "AND tables.name NOT LIKE 'journal%' AND tables.name NOT LIKE 'seat%' "
                  "AND tables.name NOT LIKE '%\\_card' ESCAPE '\\'"};
    int seen = 0;
    while (columns.step()) {
        const auto words = columnWords(columns.text(1));
        EXPECT_TRUE(words) << columns.text(0) << "." << columns.text(1)
                           << ": name it in db/tables/column_words.cpp";
        EXPECT_EQ(words.value_or(Phrase{}).english.find('_'), std::string_view::npos) << columns.text(1);
        ++seen;
    }
    EXPECT_GT(seen, 150);
}

TEST_F(ShopActions, SameSettingsLeaveNoEntry) {
    const std::string last = lastTitle();
    const auto before = dump();
    ASSERT_TRUE(changeSettings(shop(), loadSettings(connection())).ok());
    EXPECT_EQ(dump(), before);
    EXPECT_EQ(lastTitle(), last);
}

TEST_F(ShopActions, SettingOutOfItsRangeIsNamed) {
    const std::vector<std::pair<std::string, std::function<void(ShopSettings&)>>> wrong{
        {"shopName", [](auto& settings) { settings.shopName = " "; }},
        {"shopName", [](auto& settings) { settings.shopName = std::string(61, 'x'); }},
        {"fairName", [](auto& settings) { settings.fairName = "a\nb"; }},
        {"collectAt", [](auto& settings) { settings.collectAt = std::string(101, 'x'); }},
        {"whenEdgeLifts", [](auto& settings) { settings.whenEdgeLifts = "a\nb"; }},
        {"currency", [](auto& settings) { settings.currency.code = "gbp"; }},
        {"currency", [](auto& settings) { settings.currency.code = "GB"; }},
        {"currency", [](auto& settings) { settings.currency.sign = ""; }},
        {"currency", [](auto& settings) { settings.currency.exponent = 5; }},
        {"depositPercent", [](auto& settings) { settings.depositPercent = 101; }},
        {"minuteRate", [](auto& settings) { settings.minuteRate = {-1}; }},
        {"overheadPerGarment", [](auto& settings) { settings.overheadPerGarment = {-1}; }},
        {"marginPercent", [](auto& settings) { settings.marginPercent = 96; }},
        {"pricePoint", [](auto& settings) { settings.pricePoint = {0}; }},
        {"planMarginPercent", [](auto& settings) { settings.planMarginPercent = -1; }},
        {"washerHolds", [](auto& settings) { settings.washerHolds = {0}; }},
        {"washTakes", [](auto& settings) { settings.washTakes = Minutes{0}; }},
        {"dryingTakes", [](auto& settings) { settings.dryingTakes = Hours{-1}; }},
        {"shrinkLimitPercent",
         [](auto& settings) { settings.shrinkLimitPercent = std::numeric_limits<double>::quiet_NaN(); }},
        {"keepingPercent", [](auto& settings) { settings.keepingPercent = 101; }},
        {"blankLeadTime", [](auto& settings) { settings.blankLeadTime = Days{-1}; }},
        {"runOutPercent", [](auto& settings) { settings.runOutPercent = 0; }},
        {"runOutPercent", [](auto& settings) { settings.runOutPercent = 51; }},
        {"boughtToLast", [](auto& settings) { settings.boughtToLast = Days{366}; }},
        {"filmLeadTime", [](auto& settings) { settings.filmLeadTime = Days{366}; }},
        {"decalGap", [](auto& settings) { settings.decalGap = {-1}; }},
        {"edgeMargin", [](auto& settings) { settings.edgeMargin = {101}; }},
        {"filmWastePercent", [](auto& settings) { settings.filmWastePercent = -1; }},
        {"mostOverUnderHeat", [](auto& settings) { settings.mostOverUnderHeat = Seconds{0}; }},
        {"restBeforeWash", [](auto& settings) { settings.restBeforeWash = Hours{-1}; }},
        {"betterRest", [](auto& settings) { settings.betterRest = Hours{1}; }},
        {"readingsGoStaleAfter", [](auto& settings) { settings.readingsGoStaleAfter = Hours{0}; }},
        {"week", [](auto& settings) { settings.week[2] = OpeningHours{Hours{12}, Hours{12}}; }},
        {"week", [](auto& settings) { settings.week[2] = OpeningHours{Hours{12}, Hours{25}}; }},
        {"week", [](auto& settings) { settings.week[2] = OpeningHours{Hours{-1}, Hours{12}}; }},
        {"closedDays", [](auto& settings) { settings.closedDays = {localDate(1999, 1, 1)}; }},
    };
    for (const auto& [field, spoil] : wrong) {
        ShopSettings settings = loadSettings(connection());
        spoil(settings);
        expectRefused<Doing>([&] { return changeSettings(shop(), settings); }, field);
    }
}

TEST_F(ShopActions, DecimalsOfTheCurrencyStayOnceOrdersAreTaken) {
    takeTees();
    ShopSettings settings = loadSettings(connection());
    settings.currency = {"KWD", "KD", 3};
    expectRefused<Doing>([&] { return changeSettings(shop(), settings); }, "currency");
    settings.currency = {"EUR", "€", 2};
    EXPECT_TRUE(changeSettings(shop(), settings).ok());
}

} // namespace
} // namespace holdfast::db

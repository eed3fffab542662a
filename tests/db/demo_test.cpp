// SPDX-License-Identifier: GPL-3.0-or-later
// The demo's shop: whole, the same each time, in the middle of its morning, with something of everything.

#include "db/demo/demo_shop.h"

#include "core/orders/decal_on_cloth.h"
#include "core/orders/film_waste.h"
#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"
#include "db/check/check.h"
#include "db/journal/shop.h"
#include "db/tables/facts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <stdexcept>
#include <time.h>

namespace holdfast::db {
namespace {

class Folder {
public:
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "holdfast-demo-XXXXXX").string();
        m_path = mkdtemp(name.data());
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }
    std::filesystem::path operator/(const char* name) const { return m_path / name; }
    bool isEmpty() const { return std::filesystem::is_empty(m_path); }

private:
    std::filesystem::path m_path;
};

std::string bytesOf(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    return bytes.str();
}

const LocalDate kAWednesday = localDate(2026, 11, 11);

// A demo made for one day, opened and reckoned.
class Demo {
public:
    explicit Demo(LocalDate on)
        : now(demoNow(on)) {
        const auto made = makeDemoShop(path(), on);
        if (!made.ok())
            throw std::runtime_error(made.error().message.english());
        auto opened = Shop::open(path(), [instant = now.instant] { return instant; });
        if (!opened.ok())
            throw std::runtime_error(opened.error().message.english());
        shop = std::move(opened).value();
        ClimateReckoner reckoner;
        Connection& connection = shop->connection();
        reckoned = reckonShop(loadOpenFacts(connection), loadClimate(connection),
                              loadRecentUse(connection, now.instant), reckoner, now, PlanSearch{});
        walk = walkOf(*reckoned);
    }

    std::filesystem::path path() const { return m_folder / "demo.holdfast"; }
    const ShopFacts& facts() const { return reckoned->facts; }
    std::int64_t number(std::string_view sql) const { return shop->connection().number(sql); }
    std::string label(GarmentId garment) const { return facts().labelOf(facts().garments.at(garment)); }

    std::size_t planned() const {
        std::size_t count = 0;
        for (const WalkRun& run : walk.runs)
            count += static_cast<std::size_t>(
                std::ranges::count(run.entries, WalkState::Planned, &WalkEntry::state));
        return count;
    }

    const Now now;
    std::unique_ptr<Shop> shop;
    std::shared_ptr<const ReckonedShop> reckoned;
    Walk walk;

private:
    Folder m_folder;
};

// One for all tests that only look.
const Demo& wednesday() {
    static const Demo demo(kAWednesday);
    return demo;
}

std::set<std::string> rulesOf(const std::map<GarmentId, Assessment>& assessments) {
    std::set<std::string> rules;
    for (const auto& [garment, assessment] : assessments)
        for (const Finding& finding : assessment.findings)
            rules.emplace(ruleCode(finding.rule));
    return rules;
}

// Rules run from the first to the last of the list in core/facts/rule.h.
std::set<std::string> allRulesBut(std::initializer_list<Rule> left) {
    std::set<std::string> rules;
    for (int at = 0; at <= static_cast<int>(Rule::LetteringTooSmall); ++at)
        if (std::ranges::find(left, static_cast<Rule>(at)) == left.end())
            rules.emplace(ruleCode(static_cast<Rule>(at)));
    return rules;
}

class DemoOn : public ::testing::TestWithParam<LocalDate> {};

// A Sunday, days beside changes of the clock and of the year, a leap day.
INSTANTIATE_TEST_SUITE_P(Days, DemoOn,
                         ::testing::Values(kAWednesday, localDate(2026, 11, 15), localDate(2026, 3, 29),
                                           localDate(2027, 1, 1), localDate(2028, 2, 29)),
                         [](const auto& day) {
                             std::string name = isoDate(day.param);
                             std::erase(name, '-');
                             return name;
                         });

// A shop that has a press cannot show what a shop without one is told: see the test below. And no decal of
// this shop lies off its cloth.
TEST_P(DemoOn, ShowsEveryRuleInTheMiddleOfAMorningsWalk) {
    const Demo demo(GetParam());
    EXPECT_EQ(rulesOf(demo.reckoned->assessments), allRulesBut({Rule::NoPress, Rule::DecalOffCloth}));

    const Walk& walk = demo.walk;
    EXPECT_EQ(clockTime(demo.now.local()), "09:40");
    EXPECT_GE(walk.pressed, 8u);
    ASSERT_TRUE(walk.onPress);
    EXPECT_EQ(demo.label(*walk.onPress), "418-b");
    EXPECT_GE(walk.rack.size(), 2u);
    EXPECT_LE(walk.rack.size(), 3u);
    for (const RackEntry& entry : walk.rack)
        EXPECT_GT(entry.until, demo.now.instant) << demo.label(entry.garment);
    EXPECT_GE(walk.aside.size(), 4u);
    EXPECT_LE(walk.aside.size(), 8u);
    const auto runsPlanned = std::ranges::count_if(walk.runs, [](const WalkRun& run) {
        return std::ranges::count(run.entries, WalkState::Planned, &WalkEntry::state) > 0;
    });
    EXPECT_EQ(runsPlanned, 3);
    EXPECT_GE(demo.planned(), 8u);
    EXPECT_TRUE(demo.facts().settings.isOpenOn(demo.now.today()));
    for (const WalkRun& run : walk.runs)
        for (const WalkEntry& entry : run.entries)
            EXPECT_FALSE(entry.isAfterClosing) << demo.label(entry.garment);
}

TEST_P(DemoOn, HasEveryDecalOnItsCloth) {
    const Demo demo(GetParam());
    std::vector<OrderId> all;
    Query orders = demo.shop->connection().query("SELECT id FROM shop_order");
    while (orders.step())
        all.push_back(orders.id<OrderId>(0));
    const ShopFacts facts = loadFactsOf(demo.shop->connection(), all);
    std::size_t looked = 0;
    for (const Garment& garment : facts.garments)
        for (const Decal& decal : garment.decals) {
            ++looked;
            EXPECT_EQ(offClothWords(facts.styleOf(garment), garment.size, spotOf(decal)), "")
                << facts.labelOf(garment) << ", " << decal.describe();
        }
    EXPECT_GE(looked, 90u);
}

// A fair tomorrow, and the shop open on that day, too: what is promised for it can be fetched then.
TEST_P(DemoOn, PromisesOnlyDaysOnWhichItIsOpenAndIsAtTheFairTomorrow) {
    const Demo demo(GetParam());
    const ShopSettings& settings = demo.facts().settings;
    const LocalDate today = demo.now.today();
    std::size_t open = 0;
    for (const Order& order : demo.facts().orders) {
        open += order.isOpen() ? 1 : 0;
        EXPECT_TRUE(settings.isOpenOn(dateOf(order.promised))) << order.number;
    }
    EXPECT_GE(open, 15u);
    EXPECT_TRUE(settings.closedDays.empty());
    EXPECT_EQ(settings.fairName, "") << "today orders are taken at the workshop";
    const auto fairs = demo.facts().fairs;
    EXPECT_EQ(std::ranges::count_if(fairs, [&](const Fair& fair) { return fair.isOn(today + Days{1}); }), 1);
    EXPECT_EQ(std::ranges::count_if(fairs, [&](const Fair& fair) { return fair.isOn(today); }), 0);
}

TEST(Demo, CutsSeveralDecalsAtOnce) {
    const FilmWaste waste = filmWaste(wednesday().facts().cutting, wednesday().facts().settings);
    EXPECT_TRUE(waste.isMeasured);
    EXPECT_GE(waste.percent, 30);
    EXPECT_LE(waste.percent, 80);
}

TEST(Demo, TellsAShopWithoutAPressThatItHasNone) {
    const Demo& demo = wednesday();
    ShopFacts facts = demo.facts();
    facts.presses = {};
    facts.pressChecks.clear();
    const Surroundings around{facts, demo.reckoned->conditions, demo.reckoned->allotment, demo.now};
    EXPECT_TRUE(rulesOf(assessAll(around)).contains(std::string(ruleCode(Rule::NoPress))));
}

TEST(Demo, HasItsGarmentUnderThePlatenWithSevenSecondsToGo) {
    const Demo& demo = wednesday();
    const Assessment& pressed = demo.reckoned->of(*demo.walk.onPress);
    const RouteStep& step = pressed.route.steps.at(*pressed.progress.underway);
    EXPECT_EQ(step.key, "press-1");
    EXPECT_EQ(step.platen - (demo.now.instant - *pressed.progress.underwaySince), Seconds{7});
}

TEST(Demo, HasGarmentsAsideForReasonsThatDiffer) {
    std::set<std::string> reasons;
    for (const AsideEntry& entry : wednesday().walk.aside)
        EXPECT_TRUE(reasons.insert(entry.what.english()).second) << entry.what << " twice";
    EXPECT_TRUE(reasons.contains("To cut"));
}

TEST(Demo, HasGarmentsInEveryStage) {
    const Demo& demo = wednesday();
    std::set<std::string> stages;
    for (const auto& [garment, assessment] : demo.reckoned->assessments)
        stages.emplace(stageCode(assessment.stage));
    const std::set<std::string> open{"to-confirm", "to-buy",   "to-wash", "drying",  "to-cut",
                                     "to-press",   "on-press", "cooling", "resting", "ready"};
    EXPECT_EQ(stages, open);
    EXPECT_GE(demo.number("SELECT COUNT(*) FROM shop_order WHERE state = 'handed-over'"), 15);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM shop_order WHERE state = 'cancelled'"), 2);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM shop_order WHERE state = 'quoted'"), 1);
}

TEST(Demo, IsAWorkshopOfFortyOrders) {
    const Demo& demo = wednesday();
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM shop_order"), 40);
    EXPECT_EQ(demo.number("SELECT MIN(number) FROM shop_order"), 388);
    EXPECT_EQ(demo.number("SELECT MAX(number) FROM shop_order"), 427);
    EXPECT_GE(demo.number("SELECT COUNT(*) FROM garment"), 88);
    EXPECT_EQ(demo.number("SELECT COUNT(DISTINCT outline) FROM blank_style"), 8);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM film"), 12);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM film_roll WHERE state <> 'used-up'"), 20);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM press"), 2);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM spoil"), 1);
    EXPECT_GE(demo.number("SELECT COUNT(*) FROM waiver"), 1);
    EXPECT_GE(demo.number("SELECT COUNT(*) FROM money_move WHERE kind = 'refund'"), 2);
    EXPECT_GE(demo.number("SELECT COUNT(*) FROM money_move WHERE kind = 'payment'"), 15);
    EXPECT_GE(demo.number("SELECT COUNT(*) FROM test_strip WHERE passed"), 1);
    EXPECT_GE(demo.number("SELECT COUNT(*) FROM test_strip WHERE NOT passed"), 1);
    EXPECT_GE(demo.number("SELECT SUM(units) FROM lot_move"), 250);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM claim"), 4);
    EXPECT_EQ(demo.number("SELECT COUNT(*) FROM claim WHERE answer IS NULL"), 1);
}

TEST(Demo, HasThreeMonthsOfClimateInTwoPlaces) {
    const Demo& demo = wednesday();
    ASSERT_EQ(demo.reckoned->climate.size(), 2u);
    std::size_t gaps = 0, damp = 0, warm = 0;
    for (const auto& [place, series] : demo.reckoned->climate) {
        EXPECT_GE(series->back().at - series->front().at, Days{88});
        for (std::size_t at = 1; at < series->size(); ++at) {
            const auto between = (*series)[at].at - (*series)[at - 1].at;
            EXPECT_GE(between, Hours{2});
            gaps += between > kAllowedGap ? 1 : 0;
        }
        damp += std::ranges::any_of(*series, [](const auto& each) { return each.humidity.percent > 60; });
        warm += std::ranges::any_of(*series, [](const auto& each) { return each.temperature.value > 25; });
    }
    EXPECT_EQ(gaps, 1u);
    EXPECT_EQ(damp, 2u);
    EXPECT_EQ(warm, 2u);
}

TEST(Demo, HasRollsOfAllAges) {
    const Demo& demo = wednesday();
    std::map<std::string, int> rolls;
    for (const RollForecast& forecast : demo.reckoned->allotment.useFirst) {
        if (!forecast.daysLeft)
            ++rolls["no limit"];
        else if (*forecast.daysLeft < Days{0})
            ++rolls["past"];
        else
            ++rolls[*forecast.daysLeft <= Days{31} ? "this month" : "later"];
        rolls["not to be used"] += forecast.mayBeUsed ? 0 : 1;
    }
    EXPECT_EQ(rolls["past"], 1);
    EXPECT_EQ(rolls["this month"], 3);
    EXPECT_GE(rolls["later"], 8);
    EXPECT_GE(rolls["no limit"], 1);
    EXPECT_LE(rolls["not to be used"], 4);
}

TEST(Demo, IsSoundAndItsJournalTellsItInOrder) {
    const Demo& demo = wednesday();
    const auto findings = checkShop(*demo.shop);
    ASSERT_TRUE(findings.ok()) << findings.error().message.english();
    EXPECT_EQ(*findings, std::vector<Sentence>{});
    const auto entries = demo.shop->recent(100'000);
    EXPECT_GE(entries.size(), 800u);
    EXPECT_LE(entries.front().at, demo.now.instant);
    const auto outOfOrder = std::ranges::adjacent_find(
        entries, [](const HistoryEntry& later, const HistoryEntry& before) { return later.at < before.at; });
    EXPECT_TRUE(outOfOrder == entries.end()) << outOfOrder->title;
    EXPECT_LE(entries.back().at, demo.now.instant - Days{88});
    EXPECT_EQ(std::ranges::count_if(entries, &HistoryEntry::isUndone), 1);
}

// Taking all of it back, the newest first, leaves a shop of empty tables: nothing was written beside the
// journal.
TEST(Demo, CameAboutByActionsOnly) {
    Demo demo(kAWednesday);
    for (const HistoryEntry& entry : demo.shop->recent(100'000)) {
        if (entry.isUndone() || entry.undoes)
            continue;
        const auto undone = demo.shop->undo(entry.id);
        ASSERT_TRUE(undone.ok()) << entry.title << ": " << undone.error().message.english();
    }
    Query tables = demo.shop->connection().query(
        "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
        "AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'journal%' AND name NOT LIKE 'seat%' "
        "AND name NOT LIKE 'order_text%'");
    std::vector<std::string> left;
    while (tables.step())
        if (demo.number("SELECT COUNT(*) FROM " + tables.text(0)) > 0)
            left.push_back(tables.text(0));
    EXPECT_EQ(left, std::vector<std::string>{});
}

// Every row of every table, but those numbers by which chance tells two files apart.
std::vector<std::string> shownIn(const std::filesystem::path& path) {
    auto demo = Shop::openReadOnly(path, [] { return Instant{}; });
    EXPECT_TRUE(demo.ok());
    std::vector<std::string> shown;
    Query tables = (*demo)->connection().query(
        "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT IN "
        "('journal_seal', 'journal_shop', 'seat_here', 'sqlite_schema') ORDER BY name");
    while (tables.step()) {
        std::string sql = "SELECT '" + tables.text(0) + "'";
        Query columns = (*demo)->connection().query("SELECT name FROM pragma_table_info(?1) ORDER BY cid",
                                                    tables.text(0));
        while (columns.step())
            sql += " || ' ' || quote(\"" + columns.text(0) + "\")";
        Query rows = (*demo)->connection().query(sql + " FROM \"" + tables.text(0) + "\" ORDER BY 1");
        while (rows.step())
            shown.push_back(rows.text(0));
    }
    return shown;
}

TEST(Demo, IsTheSameEachTimeForOneDayAndAnotherForTheNext) {
    const Folder folder;
    ASSERT_TRUE(makeDemoShop(folder / "one", kAWednesday).ok());
    ASSERT_TRUE(makeDemoShop(folder / "two", kAWednesday).ok());
    ASSERT_TRUE(makeDemoShop(folder / "next", kAWednesday + Days{1}).ok());
    EXPECT_TRUE(shownIn(folder / "one") == shownIn(folder / "two"));
    EXPECT_FALSE(shownIn(folder / "one") == shownIn(folder / "next"));
}

TEST(Demo, RefusesANameThatIsTakenAndADayTooEarly) {
    const Folder folder;
    std::ofstream(folder / "taken") << "a letter";
    const auto taken = makeDemoShop(folder / "taken", kAWednesday);
    ASSERT_FALSE(taken.ok());
    EXPECT_NE(taken.error().message.english().find("already"), std::string::npos)
        << taken.error().message.english();
    EXPECT_EQ(bytesOf(folder / "taken"), "a letter");

    const Folder empty;
    const auto early = makeDemoShop(empty / "early", localDate(2000, 6, 1));
    ASSERT_FALSE(early.ok());
    EXPECT_NE(early.error().message.english().find("2002"), std::string::npos)
        << early.error().message.english();
    EXPECT_TRUE(empty.isEmpty());
}

// Sets the zone of the machine while it lives.
class Zone {
public:
    explicit Zone(const char* name) {
        if (const char* before = std::getenv("TZ"))
            m_before = before;
        setenv("TZ", name, 1);
        tzset();
    }
    Zone(const Zone&) = delete;
    Zone& operator=(const Zone&) = delete;
    ~Zone() {
        if (m_before)
            setenv("TZ", m_before->c_str(), 1);
        else
            unsetenv("TZ");
        tzset();
    }

private:
    std::optional<std::string> m_before;
};

TEST(Demo, StandsAtTwentyToTenOnTheWallOfAnyZone) {
    const struct {
        const char* zone;
        LocalDate on;
        int offset; // hours
    } cases[] = {
        {"UTC0", kAWednesday, 0},
        {"EAST-12EASTS,M9.5.0,M4.1.0/3", kAWednesday, 13},
        {"EAST-12EASTS,M9.5.0,M4.1.0/3", localDate(2026, 4, 5), 12}, // the clock was set back that night
        {"WEST9WESTS,M3.2.0,M11.1.0", localDate(2026, 3, 8), -8},    // and forward on this one
        {"WEST9WESTS,M3.2.0,M11.1.0", kAWednesday, -9},
    };
    for (const auto& each : cases) {
        const Zone zone(each.zone);
        const Now now = demoNow(each.on);
        EXPECT_EQ(now.offset, Hours{each.offset}) << each.zone << " " << isoDate(each.on);
        EXPECT_EQ(isoLocalMinute(now.local()), isoDate(each.on) + "T09:40");
    }
}

} // namespace
} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// However the figures are read, they are what all facts together say: after any acts, undone or not, in the
// shop of the demo, and where a row cannot be read. And what reading them asks of SQLite and of memory grows
// with the garments, not faster.
#include "db/actions/claim_actions.h"
#include "db/actions/fair_actions.h"
#include "db/demo/demo_shop.h"
#include "db/tables/figures.h"
#include "tests/db/plain_figures.h"
#include "tests/db/small_shop.h"
#include "tests/db/steps_of_sqlite.h"

#include <sqlite3.h>

#include <array>
#include <filesystem>
#include <random>

namespace holdfast::db {
namespace {

class FiguresTheSame : public SmallShop, public ::testing::WithParamInterface<unsigned> {
protected:
    std::size_t below(std::size_t count) {
        return std::uniform_int_distribution<std::size_t>{0, count - 1}(m_chance);
    }

    template <class AnyId>
    std::optional<AnyId> any(const std::string& table) {
        Query row =
            connection().query("SELECT id FROM " + table + " ORDER BY (id * 7919 + ?1) % 1009 LIMIT 1",
                               static_cast<std::int64_t>(below(1009)));
        return row.step() ? std::optional{row.id<AnyId>(0)} : std::nullopt;
    }

    void expectSame() {
        for (const int days : {400, 30, 3})
            EXPECT_EQ(figureWords(loadFigures(connection(), now().today() - Days{days}, now())),
                      figureWords(plainFigures(connection(), now().today() - Days{days}, now())));
    }

    void goTo(const std::string& place) {
        auto settings = loadSettings(connection());
        settings.fairName = place;
        ASSERT_TRUE(changeSettings(shop(), settings).ok());
    }

    void addAnyFair() {
        Fair fair;
        fair.name = below(2) == 0 ? "Creek Fair" : "Quay Market";
        fair.firstDay = now().today() + Days{below(12)} - Days{6};
        fair.lastDay = fair.firstDay + Days{below(3)};
        fair.hours = {Hours{10}, Hours{16}};
        fair.stallCost = {static_cast<std::int64_t>(below(4)) * 1000};
        (void)addFair(shop(), fair);
    }

    void makeAny() {
        const int garments = static_cast<int>(below(3)) + 1;
        receiveCleanTees(garments);
        auto draft = aDraft();
        draft.promised = inDays(static_cast<int>(below(4)) + 1);
        draft.garments.clear();
        for (int count = 0; count < garments; ++count) {
            GarmentDraft garment = aTee();
            garment.decals[0].width = {static_cast<std::int64_t>(below(300)) + 60};
            if (below(3) == 0) {
                garment.decals.push_back(garment.decals[0]);
                garment.decals[1].below = {static_cast<std::int64_t>(below(400))};
                garment.decals[1].content = Wording{"Odile", Face::Plain};
                garment.decals[1].layer = static_cast<int>(below(2)) + 1;
            }
            draft.garments.push_back(garment);
        }
        const auto order = takeOrder(shop(), draft, now());
        if (!order.ok() || below(4) == 0)
            return;
        (void)receiveRoll(shop(), aRoll(), now());
        cutWhatCanBe(order->id);
        for (const GarmentId garment : garmentsOf(order->id)) {
            press(garment);
            if (below(6) == 0 && markSpoiled(shop(), garment, "scorched").ok() && below(2) == 0)
                press(garment);
        }
        if (below(4) != 0)
            (void)handOver(shop(), order->id, now());
    }

    void cutWhatCanBe(OrderId order) {
        for (const GarmentId garment : garmentsOf(order))
            for (const DecalId decal : decalsOf(garment))
                (void)cutDecals(shop(), *any<RollId>("film_roll"), std::span{&decal, 1}, {240}, now());
    }

    // What an undo left on the press.
    void clearThePress() {
        const GarmentId left{
            number("SELECT COALESCE(MAX(garment_id), 0) FROM press_step WHERE finished_at IS NULL")};
        for (int step = 0; left.isSet() && step < 40; ++step)
            (void)finishStep(shop(), left, routeFor(left));
    }

    // To its end, or all but the last look.
    void press(GarmentId garment) {
        clearThePress();
        const Route route = routeFor(garment);
        const std::size_t steps = route.steps.size() - (below(5) == 0 ? 1 : 0);
        (void)takeUp(shop(), garment, route, now());
        for (std::size_t step = 0; step < steps; ++step) {
            wait(Seconds{20});
            (void)finishStep(shop(), garment, route);
        }
    }

    void actByChance() {
        wait(Hours{below(14)});
        switch (below(14)) {
        case 0:
            return addAnyFair();
        case 1:
            return goTo(std::array{"", "Creek Fair", "Quay Market"}[below(3)]);
        case 2:
            if (const auto garment = any<GarmentId>("garment"))
                (void)recordClaim(shop(),
                                  {*garment,
                                   {},
                                   now().today(),
                                   below(3) == 0 ? Fault::NotAsOrdered : Fault::EdgeLifts,
                                   {},
                                   ""},
                                  now());
            return;
        case 3:
            if (const auto order = below(2) == 0 ? any<OrderId>("shop_order") : std::nullopt)
                (void)cancelOrder(shop(), *order, "changed their mind");
            return;
        case 4:
        case 5: {
            const auto entries = shop().recent(40);
            (void)shop().undo(entries[below(entries.size())].id);
            return;
        }
        default:
            return makeAny();
        }
    }

    std::mt19937 m_chance{GetParam()};
};

TEST_P(FiguresTheSame, AfterWhateverWasDone) {
    for (int count = 0; count < 60 && !HasFailure(); ++count) {
        actByChance();
        if (count % 5 == 0)
            expectSame();
    }
    expectSame();
    expectSound();
    EXPECT_GT(number("SELECT COUNT(*) FROM garment WHERE handed_over_at IS NOT NULL"), 2);
    EXPECT_GT(loadFigures(connection(), localDate(2026, 1, 1), now()).earned.size(), 0U);
}

INSTANTIATE_TEST_SUITE_P(Chance, FiguresTheSame, ::testing::Values(1U, 2U, 3U, 4U, 5U, 6U));

TEST(FiguresOfTheDemo, AreTheSameForEverySpan) {
    const auto folder = std::filesystem::path{::testing::TempDir()} / "figures-of-the-demo";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    const LocalDate day = localDate(2026, 11, 11);
    ASSERT_TRUE(makeDemoShop(folder / "demo.holdfast", day).ok());
    const Now now = demoNow(day);
    auto shop = Shop::open(folder / "demo.holdfast", [now] { return now.instant; });
    ASSERT_TRUE(shop.ok());
    for (const LocalDate from : {firstDay((*shop)->connection(), now), day - Days{90}, day - Days{7}})
        EXPECT_EQ(figureWords(loadFigures((*shop)->connection(), from, now)),
                  figureWords(plainFigures((*shop)->connection(), from, now)));
    EXPECT_GT(loadFigures((*shop)->connection(), day - Days{365}, now).handedOver.faults, 0);
    std::filesystem::remove_all(folder);
}

class FiguresOfDamage : public SmallShop {
protected:
    // As a file's bytes may have it.
    void damage(const std::string& sql) {
        sqlite3_db_config(connection().handle(), SQLITE_DBCONFIG_DEFENSIVE, 0, nullptr);
        connection().allowWriting(true);
        connection().script(
            "PRAGMA writable_schema = ON;"
            "UPDATE sqlite_schema SET sql = replace(sql, ') STRICT', ')') WHERE type = 'table';"
            "PRAGMA writable_schema = RESET;"
            "PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF;" +
            sql);
        connection().allowWriting(false);
    }

    OrderTaken soldAtAFair() {
        const OrderTaken order = readyToPress();
        pressAll(garmentOf(order));
        EXPECT_TRUE(handOver(shop(), order.id, now()).ok());
        return order;
    }
};

TEST_F(FiguresOfDamage, LeaveOutAnOrderThatCannotBeReadAndNameIt) {
    auto settings = loadSettings(connection());
    settings.fairName = "Creek Fair";
    ASSERT_TRUE(changeSettings(shop(), settings).ok());
    for (int order = 0; order < 8; ++order)
        soldAtAFair();
    const auto figures = [&] { return loadFigures(connection(), localDate(2026, 1, 1), now()); };
    ASSERT_EQ(figures().earned.at(0).orders, 8);
    std::int64_t left = 8;
    for (const char* what :
         {"UPDATE decal SET width_mm = -3 WHERE garment_id", "UPDATE garment SET position = -1 WHERE id",
          "UPDATE decal SET film_id = 77 WHERE garment_id", "UPDATE garment SET lot_id = 77 WHERE id",
          "UPDATE garment_card SET presses = '77' WHERE id"}) {
        damage(std::string{what} + " = (SELECT id FROM garment ORDER BY id LIMIT 1 OFFSET " +
               std::to_string(8 - left) + ")");
        const ShopFigures shown = figures();
        const ShopFigures plain = plainFigures(connection(), localDate(2026, 1, 1), now());
        // A card that names no press is no damage to the order itself.
        left -= std::string_view{what}.find("card") == std::string_view::npos ? 1 : 0;
        EXPECT_EQ(shown.earned.at(0).orders, left) << what;
        EXPECT_EQ(shown.earned.at(0).cost.total(), plain.earned.at(0).cost.total()) << what;
        EXPECT_EQ(shown.unread, plain.unread) << what;
    }
    damage("UPDATE shop_order SET number = -1 WHERE id = (SELECT MAX(id) FROM shop_order)");
    EXPECT_EQ(figures().earned.at(0).orders, left - 1);
}

// Twice the orders, twice the work: of SQLite's machine to a tenth, and no memory for each garment.
TEST_F(FiguresOfDamage, GrowWithTheShopAndNotFaster) {
    auto settings = loadSettings(connection());
    settings.fairName = "Creek Fair";
    ASSERT_TRUE(changeSettings(shop(), settings).ok());
    const auto taken = [&] {
        const StepsOfSqlite steps{connection()};
        (void)loadFigures(connection(), localDate(2026, 1, 1), now());
        return steps.taken();
    };
    (void)taken();
    const std::int64_t none = taken();
    for (int order = 0; order < 20; ++order)
        soldAtAFair();
    const std::int64_t twenty = taken() - none;
    for (int order = 0; order < 20; ++order)
        soldAtAFair();
    const std::int64_t forty = taken() - none;
    EXPECT_LT(static_cast<double>(forty), 2.2 * static_cast<double>(twenty));
    EXPECT_LT(twenty, 20 * 800) << "no step of a garment is read";
}

} // namespace
} // namespace holdfast::db

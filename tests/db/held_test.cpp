// SPDX-License-Identifier: GPL-3.0-or-later
// What a rule holds is refused by the actions, whatever a screen shows; a waiver lets it through.
#include "db/actions/put_back.h"
#include "tests/db/small_shop.h"
#include "tests/db/steps_of_sqlite.h"

#include <memory>

namespace holdfast::db {
namespace {

using Doing = Result<Done>;

class Held : public SmallShop {
protected:
    Doing takeUpNow(GarmentId garment) { return takeUp(shop(), garment, routeFor(garment), now()); }
    Doing cutNow(const OrderTaken& order, RollId roll) {
        return cutDecals(shop(), roll, decalsOf(garmentOf(order)), {240}, now());
    }
    void expectHeldUntilLetThrough(GarmentId garment, Rule rule, const std::string& words) {
        expectRefused<Doing>([&] { return takeUpNow(garment); }, "", words);
        ASSERT_TRUE(waive(shop(), garment, rule, "looked at it closely").ok());
        EXPECT_TRUE(takeUpNow(garment).ok());
    }
    // Undone at its end.
    std::int64_t stepsOfTakingUp(GarmentId garment) {
        const RollConditions known;
        const Route route = routeFor(garment);
        const auto counting =
            shop().read([](Connection& file) { return std::make_unique<StepsOfSqlite>(file); });
        const Doing taken = takeUp(shop(), garment, route, now(), &known);
        EXPECT_TRUE(taken.ok()) << taken.error().message.english();
        const std::int64_t steps = (*counting)->taken();
        EXPECT_GT(steps, 0);
        EXPECT_TRUE(shop().undo(shop().recent(1).at(0).id).ok());
        return steps;
    }
    void record(PlaceId place, double celsius, double humidity) {
        ASSERT_TRUE(recordReading(shop(), place, {now().instant, Celsius{celsius}, Humidity{humidity}}).ok());
    }
};

TEST_F(Held, AnUnwashedBlankIsNotTakenUp) {
    receiveTees(1);
    const auto order = takeTees();
    cutAll(order);
    const auto refused = takeUpNow(garmentOf(order));
    ASSERT_FALSE(refused.ok());
    EXPECT_TRUE(refused.error().message.english().starts_with("1-a is held. Unwashed: "))
        << refused.error().message.english();
    EXPECT_TRUE(refused.error().message.english().ends_with(
        " Needed: put in the wash, or let it through with a reason."))
        << refused.error().message.english();
    expectHeldUntilLetThrough(garmentOf(order), Rule::BlankUnwashed, "Unwashed");
}

TEST_F(Held, WhatWouldFreeItFreesIt) {
    const auto lot = receiveTees(1);
    const auto order = takeTees();
    cutAll(order);
    ASSERT_FALSE(takeUpNow(garmentOf(order)).ok());
    washAll(*lotOf(garmentOf(order)));
    EXPECT_TRUE(takeUpNow(garmentOf(order)).ok()) << lot.value;
}

TEST_F(Held, ARollThatIsBadlyStoredHoldsWhatWasCutFromIt) {
    const auto order = readyToPress();
    record(m_place, 20, 40);
    wait(Hours{1});
    record(m_place, 20, 85);
    expectHeldUntilLetThrough(garmentOf(order), Rule::RollBadlyKept, "is stored too damp");
}

TEST_F(Held, HowTheRollWasKeptMayBeHandedIn) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    RollCondition damp;
    damp.roll = m_roll;
    damp.humidityHoursOutside = 1000;
    const RollConditions known{{{m_roll, damp}}};
    expectRefused<Doing>([&] { return takeUp(shop(), garment, routeFor(garment), now(), &known); }, "",
                         "badly stored");
    EXPECT_TRUE(takeUpNow(garment).ok()) << "the file knows of no such hours";
}

TEST_F(Held, ARollPastItsUseByIsNotCutFrom) {
    receiveCleanTees(2);
    const auto order = takeTees(2);
    wait(Days{400});
    expectRefused<Doing>([&] { return cutNow(order, m_roll); }, "roll", "R-01 is past its estimated use-by");
    ASSERT_TRUE(recordTestStrip(shop(), m_roll, true, {100}, "").ok());
    EXPECT_TRUE(cutNow(order, m_roll).ok());
    wait(Days{60}); // the strip is over
    const auto other = std::vector<DecalId>{decalOf(order, 1)};
    expectRefused<Doing>([&] { return cutDecals(shop(), m_roll, other, {240}, now()); }, "roll",
                         "past its use-by");
    ASSERT_TRUE(waive(shop(), garmentOf(order, 1), Rule::RollPastAge, "a sample for the stall").ok());
    EXPECT_TRUE(cutDecals(shop(), m_roll, other, {240}, now()).ok());
}

TEST_F(Held, ARollThatFailedItsStripIsNeitherCutFromNorPressed) {
    const auto pressed = readyToPress();
    const auto uncut = takeTees();
    ASSERT_TRUE(recordTestStrip(shop(), m_roll, false, {100}, "lifts").ok());
    expectRefused<Doing>([&] { return cutNow(uncut, m_roll); }, "roll", "failed its last test strip");
    expectHeldUntilLetThrough(garmentOf(pressed), Rule::StripFailed, "failed its test strip");
}

TEST_F(Held, AShortDepositHoldsTheKnifeWhereTheShopWantsIt) {
    receiveCleanTees(1);
    auto settings = loadSettings(connection());
    settings.depositPercent = 50;
    settings.depositHolds = true;
    ASSERT_TRUE(changeSettings(shop(), settings).ok());
    const auto order = takeTees();
    expectRefused<Doing>([&] { return cutNow(order, m_roll); }, "", "1-a is held. ");
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Deposit, {2000}, PaidHow::Card).ok());
    EXPECT_TRUE(cutNow(order, m_roll).ok());
}

TEST_F(Held, WhatIsUnderWayIsFinishedWhateverComes) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    const Route route = routeFor(garment);
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    ASSERT_TRUE(recordTestStrip(shop(), m_roll, false, {100}, "lifts").ok());
    for (std::string open = "begun"; !open.empty(); open = finishStep(shop(), garment, route).value())
        wait(Seconds{20});
    EXPECT_TRUE(handOver(shop(), order.id, now()).ok());
}

TEST_F(Held, PuttingAGarmentBackOnTheWalkIsOneEntry) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    const Route route = routeFor(garment);
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    std::string open;
    while (!open.starts_with("press") && !open.starts_with("preheat"))
        open = finishStep(shop(), garment, route).value();
    expectUndoable<Doing>([&] { return putBackOnWalk(shop(), garment); }, "1-a put back on the walk");
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step"), 0);
    EXPECT_EQ(unitsOf(*lotOf(garment)), 1);
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    while (!open.starts_with("place"))
        open = finishStep(shop(), garment, route).value();
    expectRefused<Doing>([&] { return putBackOnWalk(shop(), garment); }, "", "has had heat");
}

// ── one thing done is one entry ───────────────────────────────────────────────────────────────────────

TEST_F(Held, SeveralWordingsAreAgreedInOneEntry) {
    auto draft = aDraft(2);
    draft.isConfirmed = false;
    for (GarmentDraft& garment : draft.garments)
        garment.decals[0].content = Wording{"Juno"};
    const auto order = take(draft);
    const std::vector<AgreedDecal> agreed{{decalOf(order, 0), "Juné"}, {decalOf(order, 1), std::nullopt}};
    expectUndoable<Doing>([&] { return confirmWordings(shop(), agreed, " by phone "); },
                          "1: 2 decals agreed by phone");
    EXPECT_EQ(number("SELECT COUNT(*) FROM decal WHERE confirmed_by = 'by phone'"), 2);
    const std::vector<AgreedDecal> wrong{{decalOf(order, 0), std::nullopt}, {decalOf(order, 1), ""}};
    expectRefused<Doing>([&] { return confirmWordings(shop(), wrong, "by phone"); }, "wording-2");
}

TEST_F(Held, TwoRollsAreCutFromInOneEntry) {
    receiveCleanTees(2);
    const auto order = takeTees(2);
    const auto second = receiveRoll(shop(), aRoll(), now());
    ASSERT_TRUE(second.ok());
    const std::vector<RollCut> cuts{{m_roll, decalsOf(garmentOf(order, 0)), {240}, {}},
                                    {second->id, decalsOf(garmentOf(order, 1)), {240}, {}}};
    expectUndoable<Doing>([&] { return cutFromRolls(shop(), cuts, now()); },
                          "Cut 1 decal from R-01, 0.24 m; cut 1 decal from R-02, 0.24 m");
}

TEST_F(Held, AQuotationTakesNoMoney) {
    auto draft = aDraft();
    draft.isQuotation = true;
    const auto order = take(draft);
    expectRefused<Doing>(
        [&] { return moveMoney(shop(), order.id, MoneyKind::Deposit, {100}, PaidHow::Cash); }, "",
        "is a quotation");
    ASSERT_TRUE(confirmQuotation(shop(), order.id).ok());
    EXPECT_TRUE(moveMoney(shop(), order.id, MoneyKind::Deposit, {100}, PaidHow::Cash).ok());
}

// An act looks at the garment concerned, not at the shop: of 5,000 open orders it asks once whether one of
// them is on the press, some 13 steps of SQLite each, and of 40,000 readings nothing.
TEST_F(Held, TakingUpInALargeShopTakesFewMoreSteps) {
    const auto garment = garmentOf(readyToPress());
    const std::int64_t inASmallShop = stepsOfTakingUp(garment);
    const auto filled = shop().act([&](Writer& writer) -> Result<Done> {
        for (int each = 0; each < 5000; ++each) {
            const auto customer = writer.newId<CustomerId>();
            writer.connection().run("INSERT INTO customer (id, name) VALUES (?1, 'Maker')", customer);
            const auto other = writer.newId<OrderId>();
            writer.connection().run("INSERT INTO shop_order (id, number, customer_id, state, taken_at, "
                                    "taken_at_place, promised) VALUES (?1, ?2, ?3, 'confirmed', 0, 'fair', "
                                    "'2026-11-20T15:00')",
                                    other, 1000 + each, customer);
            writer.connection().run("INSERT INTO garment (id, order_id, position, style_id, size, colour_id, "
                                    "price_minor) VALUES (?1, ?2, 1, ?3, 'M', ?4, 2600)",
                                    writer.newId<GarmentId>(), other, m_tee, m_moss);
        }
        for (int minute = 0; minute < 40'000; ++minute)
            writer.connection().run("INSERT INTO climate_reading VALUES (?1, ?2, 20, 40)", m_place,
                                    now().instant - std::chrono::minutes{minute});
        writer.describe(said("Filled the shop"));
        return Done{};
    });
    ASSERT_TRUE(filled.ok()) << filled.error().message.english();
    EXPECT_LT(stepsOfTakingUp(garment), inASmallShop + 20 * 5000);
}

} // namespace
} // namespace holdfast::db

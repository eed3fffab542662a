// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/ledgers.h"
#include "tests/db/small_shop.h"

#include <limits>

namespace holdfast::db {
namespace {

using BlankActions = SmallShop;
using Doing = Result<Done>;
using Receiving = Result<BlankLotId>;
using Washing = Result<WashLoadId>;
using Adding = Result<BlankStyleId>;

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

WashPlan washOf(BlankLotId lot, std::int64_t units) {
    WashPlan plan;
    plan.parts = {{lot, units}};
    plan.detergent = "mild, no scent";
    return plan;
}

TEST_F(BlankActions, StyleIsWrittenAsItWasTyped) {
    auto style = aStyle("Zip hoodie");
    style.name = "  Zip hoodié ";
    style.outline = "hoodie";
    style.obstacles = {{Obstacle::Zip, WayRound::Pillow}, {Obstacle::Seams, std::nullopt}};
    style.label->highestSafe = Celsius{160};
    style.label->stretch = Stretch::Some;
    style.label->care.cleaning = Cleaning::PF;
    style.forChild = true;
    style.lawCheckedBy = "Wren";
    style.supplier = " Lowmoor Knitwear ";
    expectUndoable<Adding>([&] { return addStyle(shop(), style); }, "Blank style Zip hoodié added");
    const BlankStyleId id{number("SELECT MAX(id) FROM blank_style")};
    const auto facts = loadFactsOf(connection(), {});
    const BlankStyle& written = facts.styles.at(id);
    EXPECT_EQ(written.name, "Zip hoodié");
    EXPECT_EQ(written.sizes, style.sizes);
    ASSERT_EQ(written.colours.size(), 2U);
    EXPECT_EQ(written.colours[1].name, "Ink");
    EXPECT_EQ(written.colours[1].rgb, 0x20304FU);
    EXPECT_EQ(written.label, style.label);
    EXPECT_EQ(written.weight, style.weight);
    EXPECT_EQ(written.cost, style.cost);
    EXPECT_TRUE(written.forChild);
    EXPECT_EQ(written.lawCheckedBy, "Wren");
    EXPECT_EQ(written.supplier, "Lowmoor Knitwear");
    ASSERT_EQ(written.obstacles.size(), 2U);
}

TEST_F(BlankActions, LabelMayBeReadLater) {
    auto style = aStyle("Tote");
    const auto label = *style.label;
    style.label.reset();
    const auto id = addStyle(shop(), style);
    ASSERT_TRUE(id.ok());
    EXPECT_FALSE(loadFactsOf(connection(), {}).styles.at(*id).label);
    expectUndoable<Doing>([&] { return readLabel(shop(), *id, label); },
                          "Label of Tote read: 80 % cotton, 20 % polyester");
    EXPECT_EQ(loadFactsOf(connection(), {}).styles.at(*id).label, label);
}

TEST_F(BlankActions, LabelReadAgainReplacesItsFibres) {
    auto label = *aStyle("x").label;
    label.fibres = {{Fibre::Wool, 60}, {Fibre::Cotton, 40}};
    expectUndoable<Doing>([&] { return readLabel(shop(), m_tee, label); },
                          "Label of Tee read: 60 % wool, 40 % cotton");
    EXPECT_EQ(number("SELECT COUNT(*) FROM style_fibre"), 2);
}

TEST_F(BlankActions, WrongStyleIsRefusedWithItsField) {
    const std::vector<std::pair<std::string, std::function<void(BlankStyle&)>>> wrong{
        {"name", [](auto& style) { style.name = ""; }},
        {"name", [](auto& style) { style.name = "tee"; }},
        {"name", [](auto& style) { style.name = std::string(61, 'x'); }},
        {"outline", [](auto& style) { style.outline = "cape"; }},
        {"weight", [](auto& style) { style.weight = {0}; }},
        {"weight", [](auto& style) { style.weight = {10'001}; }},
        {"cost", [](auto& style) { style.cost = {-1}; }},
        {"cost", [](auto& style) { style.cost = {100'000'000}; }},
        {"sizes", [](auto& style) { style.sizes = {}; }},
        {"sizes", [](auto& style) { style.sizes = {"M", " M"}; }},
        {"sizes", [](auto& style) { style.sizes = {""}; }},
        {"sizes", [](auto& style) { style.sizes.resize(41, "M"); }},
        {"colours", [](auto& style) { style.colours = {}; }},
        {"colours", [](auto& style) { style.colours[1].name = "Moss"; }},
        {"colour", [](auto& style) { style.colours[1].rgb = 0x1000000; }},
        {"obstacles", [](auto& style) { style.obstacles = {{Obstacle::Zip, {}}, {Obstacle::Zip, {}}}; }},
        {"reason", [](auto& style) { style.notPrewashedBecause = "no"; }},
        {"supplier", [](auto& style) { style.supplier = std::string(81, 'x'); }},
        {"lawCheckedBy", [](auto& style) { style.lawCheckedBy = std::string(81, 'x'); }},
        {"fibres", [](auto& style) { style.label->fibres[0].percent = 81; }},
        {"fibres", [](auto& style) { style.label->fibres = {}; }},
        {"highestSafe", [](auto& style) { style.label->highestSafe = Celsius{59}; }},
        {"highestSafe", [](auto& style) { style.label->highestSafe = Celsius{261}; }},
        {"highestSafe", [](auto& style) { style.label->highestSafe = Celsius{kNoNumber}; }},
        {"careWash", [](auto& style) { style.label->care.washCelsius = 96; }},
        {"careIron", [](auto& style) { style.label->care.ironCelsius = -1; }},
        {"readOn", [](auto& style) { style.label->readOn += Days{3}; }},
        {"readOn", [](auto& style) { style.label->readOn = {}; }},
    };
    for (const auto& [field, spoil] : wrong) {
        auto style = aStyle("Bib");
        spoil(style);
        expectRefused<Adding>([&] { return addStyle(shop(), style); }, field);
    }
}

TEST_F(BlankActions, ColourIsAdded) {
    expectUndoable<Result<ColourId>>([&] { return addColour(shop(), m_tee, " Reed ", 0xA9B8A0); },
                                     "Tee now also in Reed");
    EXPECT_EQ(loadFactsOf(connection(), {}).styles.at(m_tee).colours.at(2).name, "Reed");
    expectRefused<Result<ColourId>>([&] { return addColour(shop(), m_tee, "moss", 1); }, "colour");
    expectRefused<Result<ColourId>>([&] { return addColour(shop(), m_tee, "", 1); }, "colour");
    expectRefused<Result<ColourId>>([&] { return addColour(shop(), m_tee, "Oat", 0x1000000); }, "colour");
    expectRefused<Result<ColourId>>([&] { return addColour(shop(), BlankStyleId{4}, "Oat", 1); }, "style");
}

TEST_F(BlankActions, ADeliveryIsReceivedAsOne) {
    const auto order = takeTees(2);
    const std::vector<DeliveredBlanks> blanks{{"S", m_moss, 3}, {"M", m_moss, 1}, {"M", m_ink, 12}};
    using Delivering = Result<Done>;
    expectUndoable<Delivering>([&] { return receiveDelivery(shop(), m_tee, blanks, now()); },
                               "Received 16 blanks of Tee: 3 × S in Moss, 1 × M in Moss, 12 × M in Ink");
    EXPECT_TRUE(lotOf(garmentOf(order, 0)).has_value()) << "who waits gets theirs";
    EXPECT_FALSE(lotOf(garmentOf(order, 1)).has_value());
    EXPECT_EQ(number("SELECT SUM(units) FROM lot_move WHERE reason = 'received'"), 16);
    const std::vector<DeliveredBlanks> one{{"L", m_ink, 2}};
    expectUndoable<Delivering>([&] { return receiveDelivery(shop(), m_tee, one, now()); },
                               "Received 2 × Tee, L, Ink");
    expectSound();
}

TEST_F(BlankActions, ADeliveryIsReceivedWholeOrNotAtAll) {
    using Delivering = Result<Done>;
    const std::vector<std::pair<std::string, std::vector<DeliveredBlanks>>> wrong{
        {"units", {}},
        {"units", {{"S", m_moss, 3}, {"M", m_moss, 0}}},
        {"units", {{"S", m_moss, 3}, {"M", m_moss, 5001}}},
        {"units", {{"S", m_moss, 3}, {"S", m_moss, 4}}},
        {"size", {{"S", m_moss, 3}, {"XXL", m_moss, 1}}},
        {"colour", {{"S", m_moss, 3}, {"S", ColourId{4}, 1}}},
    };
    for (const auto& [field, blanks] : wrong)
        expectRefused<Delivering>([&] { return receiveDelivery(shop(), m_tee, blanks, now()); }, field);
    expectRefused<Delivering>(
        [&] { return receiveDelivery(shop(), BlankStyleId{4}, wrong[1].second, now()); }, "style");
}

TEST_F(BlankActions, StyleIsPressedUnwashedForAReasonOnly) {
    expectUndoable<Doing>([&] { return markNotPrewashed(shop(), m_tee, "washed by its maker"); },
                          "Tee is pressed unwashed: washed by its maker");
    expectUndoable<Doing>([&] { return markNotPrewashed(shop(), m_tee, ""); }, "Tee is washed first again");
    expectRefused<Doing>([&] { return markNotPrewashed(shop(), m_tee, "no"); }, "reason");
    expectRefused<Doing>([&] { return markNotPrewashed(shop(), m_tee, std::string(201, 'x')); }, "reason");
    expectRefused<Doing>([&] { return markNotPrewashed(shop(), BlankStyleId{4}, "because"); }, "style");
}

TEST_F(BlankActions, WayRoundAndLawAreNoted) {
    auto style = aStyle("Zip hoodie");
    style.obstacles = {{Obstacle::Zip, std::nullopt}};
    const auto hoodie = addStyle(shop(), style);
    ASSERT_TRUE(hoodie.ok());
    expectUndoable<Doing>([&] { return chooseWayRound(shop(), *hoodie, Obstacle::Zip, WayRound::Pillow); },
                          "Zip hoodie, zip: pressing pillow");
    expectRefused<Doing>([&] { return chooseWayRound(shop(), *hoodie, Obstacle::Buttons, WayRound::Turn); },
                         "obstacle");
    expectUndoable<Doing>([&] { return noteLawChecked(shop(), *hoodie, "Wren"); },
                          "Local law for Zip hoodie checked by Wren");
    expectRefused<Doing>([&] { return noteLawChecked(shop(), *hoodie, "  "); }, "who");
}

TEST_F(BlankActions, ReceivedBlanksGoToWhoIsPromisedFirst) {
    auto late = aDraft(), soon = aDraft();
    late.promised = inDays(9);
    soon.promised = inDays(2);
    const auto lateOrder = take(late);
    const auto soonOrder = take(soon);
    auto quoted = aDraft();
    quoted.isQuotation = true;
    quoted.promised = inDays(1);
    const auto quotation = take(quoted);
    expectUndoable<Receiving>([&] { return receiveBlanks(shop(), m_tee, "M", m_moss, 1, now()); },
                              "Received 1 × Tee, M, Moss");
    EXPECT_TRUE(lotOf(garmentOf(soonOrder)));
    EXPECT_FALSE(lotOf(garmentOf(lateOrder)));
    receiveTees(5000);
    EXPECT_TRUE(lotOf(garmentOf(lateOrder)));
    EXPECT_FALSE(lotOf(garmentOf(quotation)));
    EXPECT_EQ(number("SELECT SUM(units) FROM lot_move"), 5001);
    EXPECT_EQ(text("SELECT received_on FROM blank_lot"), "2026-11-11");
}

TEST_F(BlankActions, WhatCannotBeReceivedIsRefused) {
    for (const std::int64_t units : {std::int64_t{0}, std::int64_t{-3}, std::int64_t{5001}, INT64_MAX})
        expectRefused<Receiving>([&] { return receiveBlanks(shop(), m_tee, "M", m_moss, units, now()); },
                                 "units");
    expectRefused<Receiving>([&] { return receiveBlanks(shop(), m_tee, "", m_moss, 1, now()); }, "size");
    expectRefused<Receiving>([&] { return receiveBlanks(shop(), m_tee, "M", ColourId{2}, 1, now()); },
                             "colour");
    expectRefused<Receiving>([&] { return receiveBlanks(shop(), {}, "M", m_moss, 1, now()); }, "style");
}

TEST_F(BlankActions, CountIsAMoveWithItsReason) {
    const auto lot = receiveTees(12);
    expectUndoable<Doing>([&] { return correctCount(shop(), lot, 11, "one torn"); },
                          "Counted Tee, M, Moss: 11 instead of 12, one torn");
    expectUndoable<Doing>([&] { return correctCount(shop(), lot, 0, "box lost"); },
                          "Counted Tee, M, Moss: 0 instead of 11, box lost");
    const auto before = dump();
    ASSERT_TRUE(correctCount(shop(), lot, 0, "counted again").ok());
    EXPECT_EQ(dump(), before);
    expectRefused<Doing>([&] { return correctCount(shop(), lot, -1, "one torn"); }, "counted");
    expectRefused<Doing>([&] { return correctCount(shop(), lot, 100'001, "one torn"); }, "counted");
    expectRefused<Doing>([&] { return correctCount(shop(), lot, 3, ""); }, "reason");
    expectRefused<Doing>([&] { return correctCount(shop(), BlankLotId{4}, 3, "one torn"); }, "lot");
}

TEST_F(BlankActions, CountBelowWhatIsKeptLetsTheLastPromisedLookElsewhere) {
    const auto lot = receiveTees(2);
    auto late = aDraft(), soon = aDraft();
    late.promised = inDays(9);
    const auto lateOrder = take(late);
    const auto soonOrder = take(soon);
    const auto other = receiveTees(1);
    expectUndoable<Doing>([&] { return correctCount(shop(), lot, 1, "one torn"); },
                          "Counted Tee, M, Moss: 1 instead of 2, one torn");
    EXPECT_EQ(lotOf(garmentOf(soonOrder)), lot);
    EXPECT_EQ(lotOf(garmentOf(lateOrder)), other);
    ASSERT_TRUE(correctCount(shop(), other, 0, "torn as well").ok());
    EXPECT_FALSE(lotOf(garmentOf(lateOrder)));
    ASSERT_TRUE(correctCount(shop(), other, 1, "found again").ok());
    EXPECT_EQ(lotOf(garmentOf(lateOrder)), other);
}

TEST_F(BlankActions, WashingPartOfALotSplitsItAndTakesTheFirstPromisedAlong) {
    const auto lot = receiveTees(6);
    std::vector<OrderTaken> orders;
    for (const int days : {9, 2, 5}) {
        auto draft = aDraft();
        draft.promised = inDays(days);
        orders.push_back(take(draft));
    }
    expectUndoable<Washing>([&] { return startWash(shop(), washOf(lot, 2)); }, "Washed 2 blanks");
    const BlankLotId part{number("SELECT id FROM blank_lot WHERE parent_id IS NOT NULL")};
    EXPECT_EQ(unitsOf(lot), 4);
    EXPECT_EQ(unitsOf(part), 2);
    EXPECT_EQ(connection().number("SELECT parent_id FROM blank_lot WHERE id = ?1", part), lot.value);
    EXPECT_EQ(connection().number("SELECT last_load_id IS NULL FROM blank_lot WHERE id = ?1", lot), 1);
    EXPECT_EQ(lotOf(garmentOf(orders[0])), lot);
    EXPECT_EQ(lotOf(garmentOf(orders[1])), part);
    EXPECT_EQ(lotOf(garmentOf(orders[2])), part);
    EXPECT_EQ(titlesOf(orders[1].id).front().substr(0, 6), "Redone");
    const WashLoadId load{number("SELECT id FROM wash_load")};
    expectUndoable<Doing>([&] { return markDry(shop(), load); }, "2 blanks dry");
    expectRefused<Doing>([&] { return markDry(shop(), load); }, "", "dry already");
    const auto facts = loadFactsOf(connection(), {});
    EXPECT_TRUE(facts.lastLoadOf(facts.lots.at(part))->isDry());
}

TEST_F(BlankActions, OneWashOfSeveralLots) {
    const auto medium = receiveTees(3);
    const auto large = receiveTees(2, "L");
    auto plan = washOf(medium, 3);
    plan.parts.push_back({large, 1});
    plan.drying = Drying::TumbleLow;
    expectUndoable<Washing>([&] { return startWash(shop(), plan); }, "Washed 4 blanks");
    EXPECT_EQ(number("SELECT COUNT(*) FROM blank_lot"), 3) << "a lot washed whole stays one";
}

TEST_F(BlankActions, WashedAgainTheLotFollowsTheLastLoad) {
    const auto lot = receiveTees(1);
    auto plan = washOf(lot, 1);
    plan.softener = true;
    const auto first = startWash(shop(), plan);
    ASSERT_TRUE(first.ok());
    expectRefused<Washing>([&] { return startWash(shop(), washOf(lot, 1)); }, "parts", "in the wash already");
    ASSERT_TRUE(markDry(shop(), *first).ok());
    const auto again = startWash(shop(), washOf(lot, 1));
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(number("SELECT last_load_id FROM blank_lot"), again->value);
}

TEST_F(BlankActions, ClockSetBackDriesNoLoadBeforeItWasWashed) {
    const auto load = startWash(shop(), washOf(receiveTees(1), 1));
    ASSERT_TRUE(load.ok());
    wait(-Hours{3});
    ASSERT_TRUE(markDry(shop(), *load).ok());
    EXPECT_EQ(number("SELECT dry_at = started_at FROM wash_load"), 1);
}

TEST_F(BlankActions, WashNeedsNoDetergentNamed) {
    const auto lot = receiveTees(2);
    for (const char* nothing : {"", "  "}) {
        auto plan = washOf(lot, 1);
        plan.detergent = nothing;
        ASSERT_TRUE(startWash(shop(), plan).ok());
    }
    EXPECT_EQ(number("SELECT COUNT(*) FROM wash_load WHERE detergent = ''"), 2);
    EXPECT_TRUE(usualDetergents(connection()).empty());
}

TEST_F(BlankActions, WrongWashIsRefused) {
    const auto lot = receiveTees(2);
    const std::vector<std::pair<std::string, std::function<void(WashPlan&)>>> wrong{
        {"parts", [](auto& plan) { plan.parts.clear(); }},
        {"parts", [](auto& plan) { plan.parts.push_back(plan.parts[0]); }},
        {"lot", [](auto& plan) { plan.parts[0].lot = BlankLotId{3}; }},
        {"units", [](auto& plan) { plan.parts[0].units = 0; }},
        {"units", [](auto& plan) { plan.parts[0].units = 3; }},
        {"units", [](auto& plan) { plan.parts[0].units = -1; }},
        {"detergent", [](auto& plan) { plan.detergent = std::string(81, 'x'); }},
        {"water", [](auto& plan) { plan.water = {9}; }},
        {"water", [](auto& plan) { plan.water = {96}; }},
        {"water", [](auto& plan) { plan.water = {kNoNumber}; }},
    };
    for (const auto& [field, spoil] : wrong) {
        auto plan = washOf(lot, 1);
        spoil(plan);
        expectRefused<Washing>([&] { return startWash(shop(), plan); }, field);
    }
    ASSERT_TRUE(correctCount(shop(), lot, 0, "box lost").ok());
    expectRefused<Washing>([&] { return startWash(shop(), washOf(lot, 1)); }, "units", "no blank left");
    expectRefused<Doing>([&] { return markDry(shop(), WashLoadId{2}); }, "load");
}

TEST_F(BlankActions, ShrinkageIsMeasured) {
    const auto lot = receiveCleanTees(1);
    expectUndoable<Doing>([&] { return measureShrinkage(shop(), lot, {{700}, {672}, {500}, {495}}); },
                          "Measured Tee, M, Moss: −4.0 % in length");
    EXPECT_EQ(loadFactsOf(connection(), {}).lots.at(lot).shrinkage, (Shrinkage{{700}, {672}, {500}, {495}}));
    expectRefused<Doing>([&] { return measureShrinkage(shop(), lot, {{9}, {672}, {500}, {495}}); },
                         "lengthBefore");
    expectRefused<Doing>([&] { return measureShrinkage(shop(), lot, {{700}, {3001}, {500}, {495}}); },
                         "lengthAfter");
    expectRefused<Doing>([&] { return measureShrinkage(shop(), lot, {{700}, {672}, {0}, {495}}); },
                         "widthBefore");
    expectRefused<Doing>([&] { return measureShrinkage(shop(), lot, {{700}, {672}, {500}, {-1}}); },
                         "widthAfter");
}

} // namespace
} // namespace holdfast::db

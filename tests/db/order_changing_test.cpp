// SPDX-License-Identifier: GPL-3.0-or-later
// An order that was taken is changed: its garments, decals, customer, promise, note and prices, in one entry.
#include "core/orders/order_change.h"
#include "tests/db/small_shop.h"

#include <algorithm>

namespace holdfast::db {
namespace {

class OrderChanging : public SmallShop {
protected:
    using Changing = Result<Done>;
    using Edit = std::function<void(OrderDraft&)>;

    OrderDraft present(const OrderTaken& order) {
        return draftOf(loadFactsOf(connection(), std::span{&order.id, 1}), order.id);
    }

    Changing change(const OrderTaken& order, const Edit& edit) {
        const OrderDraft before = present(order);
        OrderDraft after = before;
        edit(after);
        return changeOrder(shop(), order.id, before, after, now());
    }

    void expectChange(const OrderTaken& order, const Edit& edit, const std::string& words) {
        expectUndoable<Changing>([&] { return change(order, edit); },
                                 "Order " + std::to_string(order.number) + " changed: " + words);
        expectSound();
    }

    void expectNoChange(const OrderTaken& order, const Edit& edit, const std::string& field,
                        const std::string& words) {
        expectRefused<Changing>([&] { return change(order, edit); }, field, words);
    }
};

TEST_F(OrderChanging, OrderIsADraftAgain) {
    OrderDraft typed = aDraft(2);
    typed.note = "ring first";
    typed.garments[1].decals[0].content = Wording{"Juno", Face::Plain, "M0 0"};
    const OrderTaken order = take(typed);
    OrderDraft again = present(order);
    EXPECT_EQ(again.customerName, typed.customerName);
    EXPECT_EQ(again.note, "ring first");
    EXPECT_EQ(again.promised, typed.promised);
    EXPECT_EQ(again.total(), typed.total());
    ASSERT_EQ(again.garments.size(), 2U);
    EXPECT_EQ(again.garments[1].taken, garmentOf(order, 1));
    EXPECT_EQ(again.garments[1].decals[0].taken, decalOf(order, 1));
    for (GarmentDraft& garment : again.garments) {
        garment.taken.reset();
        garment.decals[0].taken.reset();
    }
    EXPECT_EQ(again.garments, typed.garments);
}

TEST_F(OrderChanging, NothingChangedIsNoEntry) {
    const OrderTaken order = takeTees(2);
    const std::size_t entries = shop().recent(100).size();
    EXPECT_TRUE(change(order, [](OrderDraft&) {}).ok());
    EXPECT_EQ(shop().recent(100).size(), entries);
}

TEST_F(OrderChanging, AnotherSizeGivesTheBlankBackAndKeepsAnother) {
    const BlankLotId medium = receiveCleanTees(1);
    const BlankLotId large = receiveCleanTees(1, "L");
    const OrderTaken order = takeTees();
    const OrderTaken waiting = takeTees();
    ASSERT_EQ(lotOf(garmentOf(order)), medium);
    ASSERT_EQ(lotOf(garmentOf(waiting)), std::nullopt);
    expectChange(
        order, [](OrderDraft& draft) { draft.garments[0].size = "L"; },
        "1-a is Tee, L, Moss (was Tee, M, Moss)");
    EXPECT_EQ(lotOf(garmentOf(order)), large);
    EXPECT_EQ(lotOf(garmentOf(waiting)), medium) << "who waited for one has it";
}

TEST_F(OrderChanging, TwoGarmentsMaySwapTheirSizes) {
    const BlankLotId medium = receiveCleanTees(1);
    const BlankLotId large = receiveCleanTees(1, "L");
    OrderDraft typed = aDraft(2);
    typed.garments[1].size = "L";
    const OrderTaken order = take(typed);
    expectChange(
        order, [](OrderDraft& draft) { std::swap(draft.garments[0].size, draft.garments[1].size); },
        "1-a is Tee, L, Moss (was Tee, M, Moss), 1-b is Tee, M, Moss (was Tee, L, Moss)");
    EXPECT_EQ(lotOf(garmentOf(order, 0)), large);
    EXPECT_EQ(lotOf(garmentOf(order, 1)), medium);
}

TEST_F(OrderChanging, GarmentsAreAddedAndCancelledUnderTheirOwnLetters) {
    const BlankLotId lot = receiveCleanTees(3);
    const OrderTaken order = takeTees(3);
    expectChange(
        order, [](OrderDraft& draft) { draft.garments.erase(draft.garments.begin() + 2); },
        "1-c cancelled (Tee, M, Moss)");
    EXPECT_EQ(number("SELECT garments FROM order_card"), 2);
    EXPECT_EQ(number("SELECT total_minor FROM order_card"), 2 * aTee().price.minor);
    expectChange(
        order,
        [this](OrderDraft& draft) {
            GarmentDraft more = aTee();
            more.price = {1234};
            draft.garments.push_back(more);
        },
        "Tee, M, Moss added");
    const auto facts = loadFactsOf(connection(), std::span{&order.id, 1});
    const auto garments = facts.garmentsOf(order.id);
    ASSERT_EQ(garments.size(), 3U);
    EXPECT_EQ(facts.labelOf(*garments[2]), "1-d")
        << "the letter of the one that was cancelled is not used again";
    EXPECT_EQ(garments[2]->lot, lot);
    EXPECT_EQ(garments[2]->decals.at(0).confirmedBy, "with the change");
    EXPECT_EQ(facts.orders.at(order.id).total.minor, 2 * aTee().price.minor + 1234);
}

TEST_F(OrderChanging, DecalsAreAddedMovedResizedRewordedAndLeftOff) {
    OrderDraft typed = aDraft();
    typed.garments[0].decals[0].content = Wording{"Juno"};
    typed.garments[0].decals.push_back(typed.garments[0].decals[0]);
    typed.garments[0].decals[1].content = Artwork{"heron"};
    const OrderTaken order = take(typed);
    const FilmId oyster = *addFilm(shop(), aFilm("Oyster"));
    expectChange(
        order,
        [&](OrderDraft& draft) {
            auto& decals = draft.garments[0].decals;
            std::get<Wording>(decals[0].content).text = "Júno";
            decals[0].below = {120};
            decals[1].film = oyster;
            decals[1].width = {260};
            DecalDraft added = decals[1];
            added.taken.reset();
            added.content = Artwork{"waves"};
            decals.push_back(added);
        },
        "1-a: Name “Júno” (was Name “Juno”), 1-a: Name “Júno” at chest, 120 mm down (was chest, 70 mm down), "
        "1-a: Heron in Marram Soft, Oyster (was Marram Soft, Dusk), 1-a: Heron 260 × 220 mm (was 200 × 220 "
        "mm), "
        "1-a: Waves added in Marram Soft, Oyster");
    expectChange(
        order, [](OrderDraft& draft) { draft.garments[0].decals.erase(draft.garments[0].decals.begin()); },
        "1-a: Name “Júno” left off");
}

TEST_F(OrderChanging, WhatWasCutOtherwiseIsCutAgainAndItsFilmStaysSpent) {
    const OrderTaken order = readyToPress(2);
    const Millimetres left{lengthOf(m_roll)};
    expectChange(
        order, [](OrderDraft& draft) { draft.garments[0].decals[0].width = {150}; },
        "1-a: Heron 150 × 220 mm (was 200 × 220 mm)");
    EXPECT_EQ(number("SELECT COUNT(*) FROM decal WHERE cut_at IS NULL"), 1);
    EXPECT_EQ(lengthOf(m_roll), left.value);
    expectChange(
        order, [](OrderDraft& draft) { draft.garments[1].decals[0].below = {90}; },
        "1-b: Heron at chest, 90 mm down (was chest, 70 mm down)");
    EXPECT_EQ(number("SELECT COUNT(*) FROM decal WHERE cut_at IS NULL"), 1)
        << "where it lies is not how it is cut";
    EXPECT_FALSE(titlesOf(m_roll).empty());
}

TEST_F(OrderChanging, WhatIsAtThePressOrPressedStays) {
    const OrderTaken order = readyToPress(3);
    const Route route = routeFor(garmentOf(order));
    pressAll(garmentOf(order, 1));
    ASSERT_TRUE(takeUp(shop(), garmentOf(order), route, now()).ok());
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments[0].size = "L"; }, "garments",
        "1-a is on the press. Finish it, step it back or mark it spoiled first.");
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments.erase(draft.garments.begin()); }, "garments",
        "1-a is on the press.");
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments[0].isMadeAgain = true; }, "garments",
        "1-a is on the press.");
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments[1].size = "L"; }, "garments",
        "1-b has been at the press. It can only be changed by making it again.");
    expectChange(
        order, [](OrderDraft& draft) { draft.garments[2].size = "L"; },
        "1-c is Tee, L, Moss (was Tee, M, Moss)");
    expectChange(
        order, [](OrderDraft& draft) { draft.garments[1].price = {100}; }, "1-b costs £1.00 (was £26.50)");
}

TEST_F(OrderChanging, APressedGarmentIsMadeAgainWhereThatIsAsked) {
    const OrderTaken order = readyToPress(1);
    const GarmentId garment = garmentOf(order);
    pressAll(garment);
    const BlankLotId large = receiveCleanTees(2, "L");
    expectChange(
        order,
        [](OrderDraft& draft) {
            draft.garments[0].isMadeAgain = true;
            draft.garments[0].size = "L";
        },
        "1-a is made again, 1-a is Tee, L, Moss (was Tee, M, Moss)");
    EXPECT_EQ(number("SELECT attempt FROM garment"), 2);
    EXPECT_EQ(text("SELECT cause FROM spoil"), "changed for the customer");
    EXPECT_EQ(number("SELECT COUNT(*) FROM decal WHERE cut_at IS NULL"), 1);
    EXPECT_EQ(lotOf(garment), large);
}

TEST_F(OrderChanging, WhatIsHandedOverStays) {
    const OrderTaken order = readyToPress(2);
    pressAll(garmentOf(order));
    ASSERT_TRUE(handOver(shop(), order.id, now()).ok());
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments[0].isMadeAgain = true; }, "garments",
        "1-a is handed over; it stays as it is.");
    pressAll(garmentOf(order, 1));
    ASSERT_TRUE(handOver(shop(), order.id, now()).ok());
    expectNoChange(order, [](OrderDraft& draft) { draft.note = "x"; }, "", "handed over already");
}

TEST_F(OrderChanging, CustomerPromiseAndNoteAreChanged) {
    const OrderTaken order = takeTees();
    const std::string day = said("{when}", {{"when", inDays(9)}}).english();
    const std::string was = said("{when}", {{"when", present(order).promised}}).english();
    expectChange(
        order,
        [&](OrderDraft& draft) {
            draft.customer.reset();
            draft.customerName = "Wren Ash";
            draft.customerPhone = "07700 900111";
            draft.promised = inDays(9);
            draft.note = "a gift";
        },
        "for Wren Ash (was Odile Farrant), promised for " + day + " (was " + was + "), note written");
    EXPECT_EQ(text("SELECT customer FROM order_card"), "Wren Ash");
    expectNoChange(order, [&](OrderDraft& draft) { draft.promised = inDays(-1); }, "promised", "before now");
    wait(Days{30});
    expectChange(order, [](OrderDraft& draft) { draft.note.clear(); }, "note taken off");
}

TEST_F(OrderChanging, WhatIsOwedAfterwardsCanBePaidAtOnce) {
    OrderDraft typed = aDraft();
    typed.deposit = {2000};
    const OrderTaken order = take(typed);
    expectNoChange(
        order,
        [](OrderDraft& draft) {
            draft.garments[0].price = {3000};
            draft.deposit = {1001};
        },
        "deposit", "No more than the £10.00 owed can be taken.");
    expectChange(
        order,
        [](OrderDraft& draft) {
            draft.garments[0].price = {3000};
            draft.deposit = {1000};
            draft.depositHow = PaidHow::Card;
        },
        "1-a costs £30.00 (was £26.50), £10.00 paid, card");
    EXPECT_EQ(number("SELECT total_minor - paid_minor FROM order_card"), 0);
}

TEST_F(OrderChanging, BadInputIsRefusedByItsField) {
    const OrderTaken order = takeTees(2);
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments[1].size = "9XL"; }, "size", "Garment b: Tee has no");
    expectNoChange(order, [](OrderDraft& draft) { draft.garments[0].decals.clear(); }, "decals", "");
    expectNoChange(order, [](OrderDraft& draft) { draft.garments.clear(); }, "garments", "");
    expectNoChange(order, [](OrderDraft& draft) { draft.garments[0].price = {-1}; }, "price", "");
    expectNoChange(order, [](OrderDraft& draft) { draft.note.assign(501, 'x'); }, "note", "");
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments[0].taken = GarmentId{99}; }, "garments",
        "changed meanwhile");
    expectNoChange(
        order, [](OrderDraft& draft) { draft.garments[0].decals[0].taken = DecalId{99}; }, "garments",
        "changed meanwhile");
}

TEST_F(OrderChanging, AnOrderThatChangedMeanwhileIsOpenedAgain) {
    const OrderTaken order = takeTees(2);
    const OrderDraft seen = present(order);
    ASSERT_TRUE(changeNote(shop(), order.id, "x").ok());
    OrderDraft typed = seen;
    typed.garments[0].size = "L";
    expectRefused<Changing>([&] { return changeOrder(shop(), order.id, seen, typed, now()); }, "",
                            "Order 1 was changed meanwhile. Open it again.");
}

TEST_F(OrderChanging, AQuotationKeepsNoBlankAndIsNotAgreed) {
    receiveCleanTees(2);
    OrderDraft typed = aDraft();
    typed.isQuotation = true;
    typed.isConfirmed = false;
    const OrderTaken order = take(typed);
    expectChange(
        order,
        [](OrderDraft& draft) {
            draft.garments[0].decals[0].content = Artwork{"waves"};
            draft.garments[0].size = "L";
        },
        "1-a is Tee, L, Moss (was Tee, M, Moss), 1-a: Waves (was Heron)");
    EXPECT_EQ(lotOf(garmentOf(order)), std::nullopt);
    EXPECT_EQ(text("SELECT confirmed_by FROM decal"), "");
    expectNoChange(
        order, [](OrderDraft& draft) { draft.deposit = {100}; }, "deposit", "A quotation takes no money.");
}

TEST_F(OrderChanging, ChangeSaysWhatIsLost) {
    const OrderTaken order = readyToPress(3);
    pressAll(garmentOf(order, 1));
    const ShopFacts facts = loadFactsOf(connection(), std::span{&order.id, 1});
    const OrderDraft before = draftOf(facts, order.id);
    OrderDraft after = before;
    EXPECT_TRUE(workLost(before, after, facts).empty());
    after.garments[0].decals[0].width = {150};
    after.garments[1].isMadeAgain = true;
    after.garments.erase(after.garments.begin() + 2);
    const auto lost = workLost(before, after, facts);
    ASSERT_EQ(lost.size(), 3U);
    EXPECT_EQ(lostWords(lost[0], facts),
              "1-a: cut in vain: Heron, 200 × 220 mm. To cut again takes about 7 min.");
    EXPECT_EQ(lostWords(lost[1], facts), "1-b has been at the press: its blank and its film are lost.");
    EXPECT_EQ(lostWords(lost[2], facts), "1-c: cut in vain: Heron, 200 × 220 mm.");
}

TEST_F(OrderChanging, OneGarmentIsCancelledAlone) {
    const BlankLotId lot = receiveCleanTees(2);
    const OrderTaken order = takeTees(2);
    const OrderTaken waiting = takeTees();
    const GarmentId garment = garmentOf(order, 1);
    expectUndoable<Changing>([&] { return cancelGarment(shop(), garment, "too many", now()); },
                             "1-b cancelled: too many");
    EXPECT_EQ(lotOf(garmentOf(waiting)), lot);
    EXPECT_EQ(number("SELECT total_minor FROM order_card WHERE number = 1"), aTee().price.minor);
    expectRefused<Changing>([&] { return cancelGarment(shop(), garment, "too many", now()); }, "",
                            "1-b is cancelled.");
    expectRefused<Changing>([&] { return cancelGarment(shop(), garmentOf(order), "too many", now()); }, "",
                            "1-a is the only garment of the order. Cancel the order.");
    expectRefused<Changing>([&] { return cancelGarment(shop(), garmentOf(order), "x", now()); }, "reason",
                            "");
    expectSound();
}

TEST_F(OrderChanging, ChosenGarmentsAreHandedOver) {
    const OrderTaken order = readyToPress(3);
    pressAll(garmentOf(order, 0));
    pressAll(garmentOf(order, 1));
    const GarmentId second = garmentOf(order, 1), third = garmentOf(order, 2);
    expectRefused<Changing>([&] { return handOver(shop(), order.id, now(), std::span{&third, 1}); },
                            "garments", "1-c is not pressed yet.");
    expectUndoable<Changing>([&] { return handOver(shop(), order.id, now(), std::span{&second, 1}); },
                             "Handed over 1, 1 of 3 garments, £79.50 still owed");
    EXPECT_EQ(number("SELECT position FROM garment WHERE handed_over_at IS NOT NULL"), 2);
}

TEST_F(OrderChanging, TwoOrdersOfACustomerBecomeOne) {
    OrderDraft typed = aDraft();
    typed.deposit = {1000};
    const OrderTaken into = take(typed);
    typed.promised = inDays(12);
    const OrderTaken from = take(typed);
    expectUndoable<Changing>([&] { return mergeOrders(shop(), into.id, from.id); },
                             "Order 2 is now part of order 1");
    EXPECT_EQ(
        text("SELECT garments || ' ' || total_minor || ' ' || paid_minor FROM order_card WHERE number = 1"),
        "2 5300 2000");
    EXPECT_EQ(text("SELECT state || garments || paid_minor FROM order_card WHERE number = 2"), "cancelled00");
    EXPECT_EQ(present(into).promised, inDays(12));
    EXPECT_EQ(number("SELECT MAX(position) FROM garment"), 2);
    typed.customerName = "Wren Ash";
    const OrderTaken other = take(typed);
    expectRefused<Changing>([&] { return mergeOrders(shop(), into.id, other.id); }, "order",
                            "of two customers");
    expectRefused<Changing>([&] { return mergeOrders(shop(), into.id, into.id); }, "order", "another order");
    expectRefused<Changing>([&] { return mergeOrders(shop(), into.id, from.id); }, "",
                            "Order 2 is cancelled.");
    expectSound();
}

TEST_F(OrderChanging, SomeGarmentsBecomeAnOrderOfTheirOwn) {
    OrderDraft typed = aDraft(3);
    typed.deposit = {7000};
    typed.depositHow = PaidHow::Card;
    const OrderTaken order = take(typed);
    const std::vector<GarmentId> chosen{garmentOf(order, 1), garmentOf(order, 2)};
    using Splitting = Result<OrderTaken>;
    expectUndoable<Splitting>([&] { return splitOrder(shop(), order.id, chosen); },
                              "2 garments of order 1 are now order 2");
    EXPECT_EQ(
        text("SELECT garments || ' ' || total_minor || ' ' || paid_minor FROM order_card ORDER BY number"),
        "1 2650 2650");
    EXPECT_EQ(text("SELECT garments || ' ' || total_minor || ' ' || paid_minor FROM order_card ORDER BY "
                   "number DESC"),
              "2 5300 4350");
    EXPECT_EQ(number("SELECT SUM(minor) FROM money_move"), 7000) << "nothing was paid or given back";
    EXPECT_EQ(number("SELECT COUNT(DISTINCT how) FROM money_move"), 1);
    const GarmentId only = garmentOf(order);
    expectRefused<Splitting>([&] { return splitOrder(shop(), order.id, std::span{&only, 1}); }, "garments",
                             "At least one garment must stay in order 1.");
    expectRefused<Splitting>([&] { return splitOrder(shop(), order.id, chosen); }, "garments",
                             "Choose garments of");
    expectSound();
}

} // namespace
} // namespace holdfast::db

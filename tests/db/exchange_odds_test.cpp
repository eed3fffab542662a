// SPDX-License-Identifier: GPL-3.0-or-later
// What no laptop allows by itself and two bring about between them: it is put right where it can be, and
// else said on the order, on each of them.
#include "core/press/step_key.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

namespace holdfast::db {
namespace {

class BetweenTwo : public Laptops {
protected:
    static bool says(const NewsTakenIn& taken, const std::string& words) {
        for (const Difference& difference : taken.differences)
            if (difference.words.english().find(words) != std::string::npos)
                return true;
        return false;
    }

    void putUnderThePlaten(Shop& on, GarmentId garment) {
        const Route route = routeFor(garment);
        ASSERT_TRUE(takeUp(on, garment, route, now()).ok());
        std::string step;
        while (!isHeatKey(step)) {
            const auto next = finishStep(on, garment, route);
            ASSERT_TRUE(next.ok()) << next.error().message.english();
            step = *next;
        }
    }

    void expectTogether(Laptop& fair) {
        exchange(fair);
        expectSame(shop(), *fair.shop);
        expectWhole(shop());
        expectWhole(*fair.shop);
    }
};

TEST_F(BetweenTwo, ACancelledOrderKeepsNoBlank) {
    for (const bool isCancelledAtTheFair : {true, false}) {
        receiveCleanTees(1);
        auto draft = aDraft();
        draft.isQuotation = true;
        const auto quoted = take(draft);
        Laptop& fair = aLaptop("Laptop " + std::to_string(quoted.number));
        Shop& cancels = isCancelledAtTheFair ? *fair.shop : shop();
        Shop& confirms = isCancelledAtTheFair ? shop() : *fair.shop;
        ASSERT_TRUE(cancelOrder(cancels, quoted.id, "changed their mind").ok());
        ASSERT_TRUE(confirmQuotation(confirms, quoted.id).ok());
        bring(fair);
        expectTogether(fair);
        for (Shop* each : {&shop(), fair.shop}) {
            const bool isCancelled = textOf(*each, "SELECT state FROM shop_order WHERE id = " +
                                                       std::to_string(quoted.id.value)) == "cancelled";
            EXPECT_EQ(
                numberOf(*each, "SELECT COUNT(*) FROM garment WHERE lot_id IS NOT NULL AND order_id = " +
                                    std::to_string(quoted.id.value)),
                isCancelled ? 0 : 1);
        }
    }
}

TEST_F(BetweenTwo, TwoGarmentsOnOnePressAreSaidToBeSo) {
    const auto one = readyToPress();
    const auto two = readyToPress();
    Laptop& fair = aLaptop();
    putUnderThePlaten(shop(), garmentOf(one));
    putUnderThePlaten(*fair.shop, garmentOf(two));
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought,
                     "2-a and 1-a are both under the platen of Left, which takes one. Finish the one that "
                     "lies there, and put the other back on the walk."));
    expectTogether(fair);
    // Either way out is open.
    ASSERT_TRUE(putBackOnWalk(shop(), garmentOf(two)).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step WHERE finished_at IS NULL"), 1);
    expectTogether(fair);
}

} // namespace
} // namespace holdfast::db

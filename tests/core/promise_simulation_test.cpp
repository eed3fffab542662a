// SPDX-License-Identifier: GPL-3.0-or-later
// A thousand random weeks of a workshop, played through from order to order. The promises are the ones
// reckoned; everything else here is its own small workshop that knows nothing of how they are reckoned: one
// maker who takes up what is promised first, one washer in the evening, rolls, deliveries, closed days.

#include "core/orders/promise.h"
#include "tests/core/workshop_simulator.h"

#include <gtest/gtest.h>

#include <iostream>

namespace holdfast::test {

namespace {

constexpr unsigned kWeeks = 1000;

struct Kept {
    int orders = 0;
    int kept = 0;
    int atOnce = 0; // promised with nothing else to wait for

    double percent() const { return 100.0 * kept / orders; }
};

Kept playedWeeks(int marginPercent, double overrun) {
    Kept all;
    for (unsigned week = 1; week <= kWeeks; ++week) {
        Workshop workshop(week, marginPercent, overrun);
        workshop.play();
        for (const SimulatedOrder& order : workshop.orders()) {
            ++all.orders;
            all.kept += order.isKept() ? 1 : 0;
        }
    }
    return all;
}

} // namespace

TEST(PromiseInTheWorkshop, IsKeptWhereWorkTakesAsLongAsPlanned) {
    const Kept exact = playedWeeks(0, 0);
    std::cout << "1,000 weeks, work as planned, no margin: " << exact.kept << " of " << exact.orders
              << " promises kept, " << exact.percent() << " %\n";
    EXPECT_GT(exact.orders, 5000);
    EXPECT_GE(exact.percent(), 99.0);
}

TEST(PromiseInTheWorkshop, MarginOfTheShopMovesTheShareKeptWhereWorkOverruns) {
    double before = 0;
    for (const int margin : {0, 15, 30}) {
        const Kept overrun = playedWeeks(margin, 0.2);
        std::cout << "1,000 weeks, work overruns by 20 % on the average, margin " << margin
                  << " %: " << overrun.kept << " of " << overrun.orders << " promises kept, "
                  << overrun.percent() << " %\n";
        EXPECT_GT(overrun.percent(), before);
        before = overrun.percent();
    }
    EXPECT_GE(before, 99.0);
}

} // namespace holdfast::test

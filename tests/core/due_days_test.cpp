// SPDX-License-Identifier: GPL-3.0-or-later
// The due days of open orders: which, in which words, and the same order the same in each file.
#include "core/orders/due_days.h"
#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using namespace std::chrono_literals;
using test::aGarment;
using test::aShop;

ShopFacts aFewOrders() {
    const auto order = [](std::int64_t number, OrderState state, int day) {
        return aGarment().order([=](Order& each) {
            each.number = number;
            each.state = state;
            each.promised = localDate(2026, 12, static_cast<unsigned>(day)) + 15h;
        });
    };
    return aShop()
        .with(order(428, OrderState::Confirmed, 4))
        .with(order(429, OrderState::Quoted, 3))
        .with(order(430, OrderState::HandedOver, 2))
        .with(order(431, OrderState::Cancelled, 2))
        .build()
        .facts;
}

std::string english(const Sentence& sentence) {
    return sentence.english();
}

TEST(DueDays, AreThoseOfOpenOrdersTheEarliestFirst) {
    const auto days = dueDays(aFewOrders(), test::theMoment(), Names::LeftOut);
    ASSERT_EQ(days.size(), 2U);
    EXPECT_EQ(days[0].summary, "429, 1 garment");
    EXPECT_TRUE(days[0].isQuotation);
    EXPECT_EQ(days[1].summary, "428, 1 garment");
    EXPECT_FALSE(days[1].isQuotation);
}

TEST(DueDays, ATimeIsThatOfTheWorkshopInUtc) {
    Now now = test::theMoment();
    now.offset = 1h;
    EXPECT_EQ(dueDays(aFewOrders(), now, Names::Shown).front().at,
              std::chrono::sys_days{std::chrono::year{2026} / 12 / 3} + 14h);
}

TEST(DueDays, NamesAreInThemOrLeftOut) {
    const ShopFacts facts = aFewOrders();
    EXPECT_EQ(dueDays(facts, test::theMoment(), Names::Shown)[1].summary, "428 Odile Farrant, 1 garment");
    const auto unnamed = dueDays(facts, test::theMoment(), Names::LeftOut);
    EXPECT_EQ(dueDaysCalendar(unnamed, 7, test::theMoment().instant, english).find("Odile"),
              std::string::npos);
}

TEST(DueDays, AnOrderHasTheSameUidInEachFile) {
    const auto days = dueDays(aFewOrders(), test::theMoment(), Names::Shown);
    const std::string uid = "UID:order-" + std::to_string(days[0].order.value) + "@shop-7\r\n";
    const Instant written = test::theMoment().instant;
    EXPECT_NE(dueDaysCalendar(days, 7, written, english).find(uid), std::string::npos);
    EXPECT_NE(dueDaysCalendar(days, 7, written + 24h, english).find(uid), std::string::npos);
    EXPECT_EQ(dueDaysCalendar(days, 8, written, english).find(uid), std::string::npos);
}

} // namespace
} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
// Two laptops that each took an order for the same reference of a web shop.
#include "db/actions/order_file_actions.h"
#include "db/tables/order_file_rows.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

namespace holdfast::db {
namespace {

class SameReference : public Laptops {
protected:
    SameReference()
        : m_like(garmentOf(takeTees())) {}

    void takeFile(Shop& on, const std::vector<std::string>& references) {
        OrderFileRead file;
        file.naming = {
            "Web shop",
            {"Order", "Name", "Item"},
            {{OrderColumn::Reference, "Order"}, {OrderColumn::Customer, "Name"}, {OrderColumn::Item, "Item"}},
            {{"Heron tee", m_like}}};
        for (const std::string& reference : references)
            file.orders.push_back({reference, {}, aDraft(), {}});
        const auto taken = takeOrdersOfFile(on, file, now());
        ASSERT_TRUE(taken.ok()) << taken.error().message.english();
    }

    static std::string wordsOf(const NewsTakenIn& taken) {
        std::string all;
        for (const Difference& difference : taken.differences)
            all += difference.words.english() + "\n";
        return all;
    }

    void expectBothKept(Laptop& fair) {
        for (Shop* each : {&shop(), fair.shop})
            EXPECT_EQ(numberOf(*each, "SELECT COUNT(*) FROM order_reference JOIN shop_order ON "
                                      "shop_order.id = order_id WHERE reference = 'W-1'"),
                      2);
        expectSame(shop(), *fair.shop);
        expectWhole(shop());
        expectWhole(*fair.shop);
    }

    GarmentId m_like;
};

TEST_F(SameReference, BothOrdersStayAndTheRemarkNamesTheReference) {
    Laptop& fair = aLaptop();
    takeFile(shop(), {"W-1", "W-2"});
    takeFile(*fair.shop, {"W-1", "W-3"});
    const std::string words = wordsOf(bring(fair));
    EXPECT_NE(words.find("W-1 of Web shop is taken twice, as order "), std::string::npos) << words;
    EXPECT_EQ(words.find("W-2"), std::string::npos) << words;
    EXPECT_EQ(words.find("W-3"), std::string::npos) << words;
    fetch(fair);
    expectBothKept(fair);
    // A file that has it is not taken a third time.
    EXPECT_EQ(referencesOf(connection(), "Web shop").size(), 3U);
}

TEST_F(SameReference, TheLaptopThatIsBroughtTheNewsSaysItToo) {
    Laptop& fair = aLaptop();
    takeFile(shop(), {"W-1"});
    takeFile(*fair.shop, {"W-1"});
    const std::string words = wordsOf(fetch(fair));
    EXPECT_NE(words.find("W-1 of Web shop is taken twice"), std::string::npos) << words;
    exchange(fair);
    expectBothKept(fair);
}

TEST_F(SameReference, NothingIsSaidOfOneThatIsCancelled) {
    Laptop& fair = aLaptop();
    takeFile(shop(), {"W-1"});
    ASSERT_TRUE(cancelOrder(shop(),
                            OrderId{number("SELECT order_id FROM order_reference WHERE reference = 'W-1'")},
                            "taken at the fair")
                    .ok());
    takeFile(*fair.shop, {"W-1"});
    EXPECT_EQ(wordsOf(bring(fair)).find("W-1"), std::string::npos);
    fetch(fair);
    expectBothKept(fair);
}

TEST_F(SameReference, OfManyTheFirstAreNamedAndTheRestCounted) {
    Laptop& fair = aLaptop();
    std::vector<std::string> references;
    for (int at = 1; at <= 23; ++at)
        references.push_back("W-" + std::to_string(at));
    takeFile(shop(), references);
    takeFile(*fair.shop, references);
    const std::string words = wordsOf(bring(fair));
    EXPECT_NE(words.find("3 more references are taken twice."), std::string::npos) << words;
    fetch(fair);
    expectBothKept(fair);
}

} // namespace
} // namespace holdfast::db

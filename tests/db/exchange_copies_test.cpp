// SPDX-License-Identifier: GPL-3.0-or-later
// Files that were put back from an older copy, or are used twice: whatever was done on any of them is in the
// shop in the end, and stands for what it stood for.
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdfast::db {
namespace {

class Copies : public Laptops {
protected:
    std::unique_ptr<Shop> openedUnnoticed(const std::filesystem::path& path,
                                          Seconds clockAhead = Seconds{0}) {
        hideThatItIsACopy(path);
        return opened(path, clockAhead);
    }

    NewsTakenIn carry(Shop& from, Shop& to) {
        const auto number = numberOf(to, "SELECT seat_id FROM seat_here");
        return takenIn(to, newsFrom(from, number));
    }
    // Both ways, until both have all.
    void carryAll(Shop& laptop, Shop& workshop) {
        for (int round = 0; round < 2; ++round) {
            carry(laptop, workshop);
            carry(workshop, laptop);
        }
    }

    OrderTaken orderOf(Shop& on, const std::string& customer) {
        auto draft = aDraft();
        draft.customerName = customer;
        return taken(on, draft);
    }

    static std::vector<std::string> customersIn(Shop& shop) {
        std::vector<std::string> names;
        Query rows = shop.connection().query(
            "SELECT customer.name FROM shop_order JOIN customer ON customer.id = customer_id "
            "ORDER BY customer.name");
        while (rows.step())
            names.push_back(rows.text(0));
        return names;
    }

    static std::string noteOf(Shop& shop, const std::string& customer) {
        Query row =
            shop.connection().query("SELECT shop_order.note FROM shop_order JOIN customer ON customer.id = "
                                    "customer_id WHERE customer.name = ?1",
                                    customer);
        return row.step() ? row.text(0) : std::string{};
    }

    static void expectEachNumberOnce(Shop& shop) {
        EXPECT_EQ(numberOf(shop, "SELECT COUNT(*) - COUNT(DISTINCT number) FROM shop_order"), 0);
    }

    using Names = std::vector<std::string>;
};

TEST_F(Copies, ALaptopPutBackFromItsOwnBackupWithASlowClockLosesNothing) {
    for (const bool isNoticed : {true, false}) {
        Laptop& fair = aLaptop(isNoticed ? "Fair laptop" : "Other laptop");
        exchange(fair);
        const auto backedUp = copyOf(*fair.shop);
        const auto eve = orderOf(*fair.shop, "Eve");
        bring(fair);
        auto back = isNoticed ? opened(backedUp, -Hours{1}) : openedUnnoticed(backedUp, -Hours{1});
        const auto fay = orderOf(*back, "Fay");
        if (!isNoticed) {
            EXPECT_EQ(fay.id, eve.id) << "the very id that the other order has";
        }
        const auto brought = carry(*back, shop());
        EXPECT_EQ(brought.added, 1);
        ASSERT_EQ(brought.differences.size(), 1U) << "the order number, at the least, had been given out";
        carryAll(*back, shop());
        for (Shop* each : {&shop(), back.get()}) {
            EXPECT_EQ(std::ranges::count(customersIn(*each), "Eve"), isNoticed ? 1 : 2);
            EXPECT_EQ(std::ranges::count(customersIn(*each), "Fay"), isNoticed ? 1 : 2);
            expectEachNumberOnce(*each);
            expectWhole(*each);
        }
        expectSame(shop(), *back);
    }
}

TEST_F(Copies, WhatIsDoneLaterOnEitherOfTwoCopiesOfALaptopMeansItsOwnOrder) {
    Laptop& fair = aLaptop("Fair laptop", -Hours{1});
    exchange(fair);
    auto other = openedUnnoticed(copyOf(*fair.shop), -Hours{1});
    const auto ann = orderOf(*fair.shop, "Ann");
    const auto bob = orderOf(*other, "Bob");
    ASSERT_EQ(ann.id, bob.id);
    ASSERT_TRUE(moveMoney(*fair.shop, ann.id, MoneyKind::Payment, {300}, PaidHow::Cash).ok());
    ASSERT_TRUE(moveMoney(*other, bob.id, MoneyKind::Payment, {501}, PaidHow::Cash).ok());
    bring(fair);
    EXPECT_EQ(carry(*other, shop()).added, 2);
    // The second goes on before it hears of its new numbers, and undoes what it did.
    ASSERT_TRUE(changeNote(*other, bob.id, "blue, not green").ok());
    ASSERT_TRUE(moveMoney(*other, bob.id, MoneyKind::Payment, {7}, PaidHow::Cash).ok());
    ASSERT_TRUE(other->undo(other->recent(1).front().id).ok());
    ASSERT_TRUE(changeNote(*fair.shop, ann.id, "by Friday").ok());
    EXPECT_EQ(carry(*other, shop()).added, 3);
    carry(shop(), *other);
    // And after.
    ASSERT_TRUE(changeNote(*other,
                           OrderId{numberOf(*other, "SELECT shop_order.id FROM shop_order JOIN customer ON "
                                                    "customer.id = customer_id WHERE customer.name = 'Bob'")},
                           "blue, not green, and soon")
                    .ok());
    for (int round = 0; round < 2; ++round) {
        exchange(fair);
        carryAll(*other, shop());
    }
    fetch(fair);
    for (Shop* each : {&shop(), fair.shop, other.get()}) {
        EXPECT_EQ(customersIn(*each), (Names{"Ann", "Bob"}));
        EXPECT_EQ(noteOf(*each, "Ann"), "by Friday");
        EXPECT_EQ(noteOf(*each, "Bob"), "blue, not green, and soon");
        EXPECT_EQ(textOf(*each,
                         "SELECT group_concat(name || ' ' || paid) FROM (SELECT customer.name, "
                         "SUM(minor) AS paid FROM money_move JOIN shop_order ON shop_order.id = order_id "
                         "JOIN customer ON customer.id = customer_id GROUP BY 1 ORDER BY 1)"),
                  "Ann 300,Bob 501");
        expectWhole(*each);
    }
    expectSame(shop(), *fair.shop);
    expectSame(shop(), *other);
}

TEST_F(Copies, AWorkshopPutBackFromAnOlderCopyGetsBackWhatTheLaptopHas) {
    for (const bool isFetchedFirst : {true, false}) {
        Laptop& fair = aLaptop(isFetchedFirst ? "Fair laptop" : "Attic laptop");
        const auto older = copyOf(shop());
        const std::string suffix = isFetchedFirst ? " one" : " two";
        orderOf(shop(), "Gil" + suffix);
        exchange(fair);
        exchange(fair);
        orderOf(*fair.shop, "Hal" + suffix);
        auto workshop = opened(older);
        orderOf(*workshop, "Ida" + suffix);
        if (isFetchedFirst) {
            const auto fetched = carry(*workshop, *fair.shop);
            EXPECT_EQ(fetched.added, 1) << "Ida";
        }
        carryAll(*fair.shop, *workshop);
        for (Shop* each : {workshop.get(), fair.shop}) {
            const auto names = customersIn(*each);
            for (const std::string name : {"Gil", "Hal", "Ida"})
                EXPECT_EQ(std::ranges::count(names, name + suffix), 1) << name;
            expectEachNumberOnce(*each);
            expectWhole(*each);
        }
        expectSame(*workshop, *fair.shop);
    }
}

TEST_F(Copies, AWorkshopPutBackFromBeforeTheLaptopWasThereKnowsItAgain) {
    const auto older = copyOf(shop());
    Laptop& fair = aLaptop();
    orderOf(*fair.shop, "Kit");
    exchange(fair);
    auto workshop = opened(older);
    orderOf(*workshop, "Lou");
    carryAll(*fair.shop, *workshop);
    expectSame(*workshop, *fair.shop);
    EXPECT_EQ(customersIn(*workshop), (Names{"Kit", "Lou"}));
    const auto known = seats(workshop->connection());
    ASSERT_EQ(known.size(), 2U);
    EXPECT_EQ(known[1].name, "Fair laptop");
    EXPECT_LT(known[0].lastOrderNumber, known[1].firstOrderNumber) << "no number is given out twice";
}

TEST_F(Copies, ALaptopPutBackFromAnOlderCopyJoinsOnByItself) {
    Laptop& fair = aLaptop();
    const auto older = copyOf(*fair.shop);
    orderOf(shop(), "Mab");
    exchange(fair);
    bring(fair); // the workshop hears that the laptop has it
    orderOf(shop(), "Ned");
    auto back = opened(older);
    EXPECT_EQ(carry(shop(), *back).added, 2);
    expectSame(shop(), *back);
}

TEST_F(Copies, TwoWorkshopsAreUsedAndALaptopGoesBetweenThem) {
    Laptop& fair = aLaptop();
    exchange(fair);
    auto second = opened(copyOf(shop()));
    orderOf(shop(), "Ola");
    orderOf(*second, "Pia");
    orderOf(*fair.shop, "Quin");
    carry(shop(), *fair.shop);
    carry(*second, *fair.shop);
    carry(*fair.shop, *second);
    EXPECT_EQ(customersIn(*second), (Names{"Ola", "Pia", "Quin"}));
    carry(*second, *fair.shop);
    expectSame(*second, *fair.shop);
    carry(shop(), *fair.shop);
    carry(*fair.shop, shop());
    EXPECT_EQ(customersIn(shop()), (Names{"Ola", "Pia", "Quin"}));
    expectWhole(shop());
    expectWhole(*fair.shop);
}

TEST_F(Copies, ALaptopsCopyBecomesTheWorkshopsWhenThatIsLost) {
    Laptop& fair = aLaptop("Fair laptop");
    Laptop& attic = aLaptop("Attic laptop");
    const auto sam = orderOf(shop(), "Sam");
    exchange(fair);
    exchange(attic);
    auto lost = opened(copyOf(shop()));
    orderOf(*lost, "Una");
    orderOf(*fair.shop, "Tib");
    orderOf(*attic.shop, "Vic");

    const auto next = becomeWorkshop(*fair.shop);
    ASSERT_TRUE(next.ok()) << next.error().message.english();
    EXPECT_TRUE(isTheWorkshop(fair.shop->connection()));
    EXPECT_EQ(entriesToBring(fair.shop->connection()), 0);
    const auto everyone = seats(fair.shop->connection());
    ASSERT_EQ(everyone.size(), 3U);
    EXPECT_TRUE(everyone[0].isHere && everyone[0].isInUse);
    EXPECT_FALSE(everyone[1].isInUse) << "the laptop that this copy was";
    EXPECT_TRUE(everyone[2].isInUse);
    EXPECT_EQ(sam.number, 1);
    EXPECT_EQ(*next, 201) << "the first hundred's rest and a hundred more may have been given out";
    EXPECT_EQ(orderOf(*fair.shop, "Wil").number, 201);
    EXPECT_EQ(fair.shop->recent(1).at(0).seat, "This workshop");
    EXPECT_FALSE(becomeWorkshop(*fair.shop).ok()) << "it is already";

    carryAll(*attic.shop, *fair.shop);
    expectSame(*attic.shop, *fair.shop);
    EXPECT_EQ(customersIn(*attic.shop), (Names{"Sam", "Tib", "Vic", "Wil"}));
    expectWhole(*fair.shop);

    // The lost file turns up: what it has is brought by a laptop.
    carry(*lost, *attic.shop);
    carryAll(*attic.shop, *fair.shop);
    EXPECT_EQ(customersIn(*fair.shop), (Names{"Sam", "Tib", "Una", "Vic", "Wil"}));
    expectSame(*attic.shop, *fair.shop);
    expectEachNumberOnce(*fair.shop);
    auto another = makeCopyForLaptop(*fair.shop, m_folder / "new.holdfast", "Third laptop");
    ASSERT_TRUE(another.ok()) << another.error().message.english();
    EXPECT_EQ(another->number, 4);
}

TEST_F(Copies, NewsOfAnotherCopyOfALaptopsFileIsSaidToBeSo) {
    Laptop& fair = aLaptop();
    orderOf(*fair.shop, "Rae");
    EXPECT_FALSE(bring(fair).isFromAnotherCopy);
    auto other = opened(copyOf(*fair.shop));
    EXPECT_TRUE(carry(*other, shop()).isFromAnotherCopy);
    EXPECT_FALSE(carry(*other, shop()).isFromAnotherCopy);
}

// ── the incarnation ───────────────────────────────────────────────────────────────────────────────────

TEST_F(Copies, AFileKeepsItsIncarnationUntilItIsAnotherFileOrHasGoneBack) {
    const auto path = m_folder / "shop.holdfast";
    const auto backedUp = m_folder / "backup.holdfast";
    const auto of = [&](Shop& shop) { return numberOf(shop, "SELECT incarnation FROM seat_here"); };
    std::int64_t first = 0;
    {
        auto shop = Shop::create(path, [this] { return now().instant; });
        ASSERT_TRUE(shop.ok());
        first = of(**shop);
        EXPECT_NE(first, 0);
        ASSERT_TRUE(backup(**shop, backedUp).ok());
        ASSERT_TRUE(addPlace(**shop, "Under the bench").ok());
    }
    EXPECT_EQ(of(*opened(path)), first) << "closed and opened again";
    std::filesystem::rename(path, m_folder / "moved.holdfast");
    EXPECT_EQ(of(*opened(m_folder / "moved.holdfast")), first) << "moved";
    const std::string bytes = testing::bytesOf(backedUp);
    EXPECT_NE(of(*opened(backedUp)), first) << "a copy";

    testing::writeBytes(m_folder / "moved.holdfast", bytes); // over it: it is the same file for the disk
    auto back = opened(m_folder / "moved.holdfast");
    EXPECT_EQ(numberOf(*back, "SELECT COUNT(*) FROM storage_place"), 0);
    EXPECT_NE(of(*back), first) << "older contents written over it";
}

} // namespace
} // namespace holdfast::db

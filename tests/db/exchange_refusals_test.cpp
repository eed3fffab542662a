// SPDX-License-Identifier: GPL-3.0-or-later
// News that is not taken in: refused in words, and nothing is changed.
#include "db/journal/backup.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

namespace holdfast::db {
namespace {

class RefusedNews : public Laptops {
protected:
    void importManyReadings() {
        std::vector<ClimateReading> readings;
        for (int count = 0; count < 60'000; ++count)
            readings.push_back({now().instant - Minutes{count}, {21.0}, {40.0}});
        ASSERT_TRUE(importReadings(shop(), m_place, readings).ok());
    }

    void expectRefusedNews(Shop& into, const std::filesystem::path& path, const std::string& words) {
        const Dump before = dumpOf(into);
        const auto history = historyOf(into);
        const auto head = lookAtNews(into, path);
        ASSERT_FALSE(head.ok());
        EXPECT_NE(head.error().message.english().find(words), std::string::npos)
            << head.error().message.english();
        const auto taken = takeInNews(into, path);
        ASSERT_FALSE(taken.ok());
        EXPECT_EQ(taken.error().message.english(), head.error().message.english());
        EXPECT_EQ(dumpOf(into), before);
        EXPECT_EQ(historyOf(into), history);
    }
};

TEST_F(RefusedNews, OfAnotherShop) {
    Laptop& fair = aLaptop();
    auto other = Shop::createInMemory([this] { return now().instant; });
    ASSERT_TRUE(makeCopyForLaptop(*other, m_folder / "other.holdfast", "Fair laptop").ok());
    expectRefusedNews(*fair.shop, newsFrom(*other, 2), "This is news of another shop.");
    EXPECT_NE(numberOf(*other, "SELECT shop FROM journal_shop"), number("SELECT shop FROM journal_shop"));
}

TEST_F(RefusedNews, ForAnotherLaptopOrWrittenHere) {
    Laptop& fair = aLaptop("Fair laptop");
    Laptop& attic = aLaptop("Attic laptop");
    expectRefusedNews(*attic.shop, newsFrom(shop(), fair.number),
                      "is for “Fair laptop”, not for this laptop");
    expectRefusedNews(*fair.shop, newsFrom(*fair.shop),
                      "was saved on this laptop: it is for “This workshop”");
}

TEST_F(RefusedNews, FromANewerOrOlderVersion) {
    Laptop& fair = aLaptop();
    std::vector<const char*> steps(schemaSteps().begin(), schemaSteps().end());
    steps.push_back("CREATE TABLE shelf (id INTEGER PRIMARY KEY) STRICT;");
    const auto path = m_folder / "newer.holdfast";
    ASSERT_TRUE(backup(*fair.shop, path).ok());
    auto newer = Shop::open(path, [this] { return now().instant; }, steps);
    ASSERT_TRUE(newer.ok()) << newer.error().message.english();
    expectRefusedNews(shop(), newsFrom(**newer), "saved by a newer version of Holdfast");
    expectRefusedNews(**newer, newsFrom(shop(), fair.number), "saved by an older version of Holdfast");
}

TEST_F(RefusedNews, WhatIsNoNews) {
    Laptop& fair = aLaptop();
    const auto text = m_folder / "text.news";
    testing::writeBytes(text, "Dear workshop, all went well.");
    expectRefusedNews(shop(), text, "is not news of a Holdfast shop");
    expectRefusedNews(shop(), fair.shop->path(), "is not news of a Holdfast shop");
    expectRefusedNews(shop(), m_folder / "not there", "There is no file");
}

TEST_F(RefusedNews, CopiedOnlyInPart) {
    Laptop& fair = aLaptop();
    for (int count = 0; count < 30; ++count)
        taken(*fair.shop, aDraft(3));
    const std::string whole = testing::bytesOf(newsFrom(*fair.shop));
    const auto part = m_folder / "part.news";
    for (const double share : {0.1, 0.5, 0.9, 0.999}) {
        testing::writeBytes(
            part, whole.substr(0, static_cast<std::size_t>(share * static_cast<double>(whole.size()))));
        expectRefusedNews(shop(), part, "damaged or was copied only in part");
    }
}

// Every byte of the file in turn is written wrong: the news is refused, or what is read is what was written.
TEST_F(RefusedNews, DamagedAnywhere) {
    Laptop& fair = aLaptop();
    taken(*fair.shop, aDraft());
    const auto path = newsFrom(*fair.shop);
    const std::string whole = testing::bytesOf(path);
    takenIn(shop(), path); // so that taking it in unchanged changes nothing
    const Dump before = dumpOf(shop());
    const auto damaged = m_folder / "damaged.news";
    int refused = 0;
    for (std::size_t at = 0; at < whole.size(); at += 7) {
        std::string bytes = whole;
        bytes[at] = static_cast<char>(~bytes[at]);
        testing::writeBytes(damaged, bytes);
        const auto outcome = takeInNews(shop(), damaged);
        refused += !outcome.ok();
        if (outcome.ok()) {
            EXPECT_EQ(outcome->added, 0) << "at byte " << at;
        }
    }
    EXPECT_GT(refused, 200);
    EXPECT_EQ(dumpOf(shop()), before);
}

// News reaches back by a thousand entries or two megabytes of them: so much is in one import of readings.
TEST_F(RefusedNews, FromALaptopThatGoesOnFromFarMoreThanAWorkshopPutBackHasUntilItIsToldWhereThatIs) {
    Laptop& fair = aLaptop();
    const auto older = m_folder / "older.holdfast";
    ASSERT_TRUE(backup(shop(), older).ok());
    importManyReadings();
    takeTees();
    exchange(fair);
    auto workshop = opened(older);
    wait(Minutes{1});
    taken(*fair.shop, aDraft());
    taken(*workshop, aDraft());
    expectRefusedNews(*workshop, newsFrom(*fair.shop), "Save news for that laptop here");
    takenIn(*fair.shop, newsFrom(*workshop, fair.number));
    takenIn(*workshop, newsFrom(*fair.shop));
    takenIn(*fair.shop, newsFrom(*workshop, fair.number));
    expectSame(*workshop, *fair.shop);
    EXPECT_EQ(numberOf(*workshop, "SELECT COUNT(*) FROM shop_order"), 3);
}

TEST_F(RefusedNews, ThatDoesNotJoinOnToALaptopPutBackFromAFarOlderCopyUntilItHasSaidWhatItKnows) {
    Laptop& fair = aLaptop();
    const auto older = m_folder / "older.holdfast";
    ASSERT_TRUE(backup(*fair.shop, older).ok());
    importManyReadings();
    exchange(fair);
    bring(fair);
    takeTees();
    auto back = opened(older);
    expectRefusedNews(*back, newsFrom(shop(), fair.number), "does not join on to what this laptop knows");
    wait(Minutes{1});
    takenIn(shop(), newsFrom(*back));
    takenIn(*back, newsFrom(shop(), fair.number));
    expectSame(shop(), *back);
}

TEST_F(RefusedNews, ACopyIsMadeInTheWorkshopUnderANameOfItsOwn) {
    Laptop& fair = aLaptop("Fair laptop");
    const auto made = makeCopyForLaptop(*fair.shop, m_folder / "x", "Another");
    ASSERT_FALSE(made.ok());
    EXPECT_NE(made.error().message.english().find("made in the workshop"), std::string::npos);
    EXPECT_EQ(makeCopyForLaptop(shop(), m_folder / "x", "Fair laptop").error().field, "name");
    EXPECT_EQ(makeCopyForLaptop(shop(), m_folder / "x", "  ").error().field, "name");
    EXPECT_FALSE(makeCopyForLaptop(shop(), fair.shop->path(), "Another").ok()) << "a name that is taken";
    EXPECT_FALSE(makeCopyForLaptop(shop(), m_folder / "x", "Another", [](double) { return false; }).ok());
    EXPECT_FALSE(std::filesystem::exists(m_folder / "x"));
    EXPECT_EQ(seats(connection()).size(), 2U);
    EXPECT_FALSE(writeNews(shop(), m_folder / "x").ok()) << "for which laptop?";
    EXPECT_FALSE(writeNews(shop(), m_folder / "x", 77).ok());
}

TEST_F(RefusedNews, OrderNumbersAreHandedOutUntilTheWorkshopNeedsTheRest) {
    connection().allowWriting(true);
    connection().run("UPDATE seat_here SET next_order_number = 96500");
    connection().allowWriting(false);
    aLaptop("One");
    aLaptop("Two");
    const auto third = makeCopyForLaptop(shop(), m_folder / "x", "Three");
    ASSERT_FALSE(third.ok());
    EXPECT_NE(third.error().message.english().find("not enough order numbers left"), std::string::npos);
}

} // namespace
} // namespace holdfast::db

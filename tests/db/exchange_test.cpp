// SPDX-License-Identifier: GPL-3.0-or-later
// The fair and back: two laptops of one shop, and the news that is carried between them.
#include "db/journal/backup.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

#include <sys/stat.h>

namespace holdfast::db {
namespace {

using SecondLaptop = Laptops;

TEST_F(SecondLaptop, ACopyHoldsWhatTheWorkshopHoldsAndHasItsOwnNameNumberAndOrderNumbers) {
    takeTees();
    ASSERT_TRUE(shop().keepNote("fair.draft", "half typed"));
    Laptop& fair = aLaptop("Fair laptop");
    expectSame(shop(), *fair.shop);
    expectWhole(*fair.shop);
    EXPECT_FALSE(fair.shop->note("fair.draft")) << "a half-typed slip is this laptop's";

    const auto here = seats(fair.shop->connection());
    ASSERT_EQ(here.size(), 2U);
    EXPECT_EQ(here[1].name, "Fair laptop");
    EXPECT_TRUE(here[1].isHere);
    EXPECT_EQ(here[1].firstOrderNumber, 99'000);
    EXPECT_EQ(here[1].lastOrderNumber, 99'999);
    EXPECT_EQ(here[0].lastOrderNumber, 98'999) << "the ranges do not overlap";
    EXPECT_FALSE(isTheWorkshop(fair.shop->connection()));
    EXPECT_TRUE(isTheWorkshop(connection()));
    EXPECT_EQ(taken(*fair.shop, aDraft()).number, 99'000);
    EXPECT_EQ(taken(shop(), aDraft()).number, 2);
}

TEST_F(SecondLaptop, TheCopyAndTheNewsAreReadableByTheirOwnerOnly) {
    const auto copy = m_folder / "copy.holdfast";
    ASSERT_TRUE(makeCopyForLaptop(shop(), copy, "Fair laptop").ok());
    const auto news = newsFrom(shop(), 2);
    for (const auto& path : {copy, news}) {
        struct stat found{};
        ASSERT_EQ(stat(path.c_str(), &found), 0);
        EXPECT_EQ(found.st_mode & 0777U, 0600U) << path;
    }
}

TEST_F(SecondLaptop, OrdersTakenOnBothAreOnBothAfterTheNewsWentBothWays) {
    receiveCleanTees(4);
    Laptop& fair = aLaptop();
    const auto atHome = takeTees();
    wait(Minutes{5});
    const auto atFair = taken(*fair.shop, aDraft(2));
    EXPECT_EQ(entriesToBring(fair.shop->connection()), 1);

    const auto brought = bring(fair);
    EXPECT_EQ(brought.fromName, "Fair laptop");
    EXPECT_EQ(brought.added, 1);
    EXPECT_TRUE(brought.touched.contains("shop_order"));
    EXPECT_TRUE(brought.differences.empty());
    const auto fetched = fetch(fair);
    EXPECT_EQ(fetched.added, 1);
    EXPECT_EQ(entriesToBring(fair.shop->connection()), 0);
    EXPECT_EQ(entriesToFetch(connection(), fair.number), 2) << "not told yet that it has them";

    for (Shop* each : {&shop(), fair.shop}) {
        EXPECT_EQ(numberOf(*each,
                           "SELECT COUNT(*) FROM shop_order WHERE number = " + std::to_string(atHome.number)),
                  1);
        EXPECT_EQ(numberOf(*each, "SELECT COUNT(*) FROM garment WHERE order_id = " +
                                      std::to_string(atFair.id.value)),
                  2);
        EXPECT_EQ(each->history(atFair.id, 10).at(0).seat, "Fair laptop");
        expectWhole(*each);
    }
    expectSame(shop(), *fair.shop);
}

TEST_F(SecondLaptop, NewsTakenInTwiceChangesNothingTheSecondTime) {
    Laptop& fair = aLaptop();
    taken(*fair.shop, aDraft());
    takeTees();
    const auto toWorkshop = newsFrom(*fair.shop);
    takenIn(shop(), toWorkshop);
    const auto toFair = newsFrom(shop(), fair.number);
    takenIn(*fair.shop, toFair);
    const Dump before = dumpOf(shop());

    EXPECT_EQ(takenIn(shop(), toWorkshop).added, 0);
    EXPECT_EQ(takenIn(shop(), toWorkshop).alreadyKnown, 1);
    EXPECT_EQ(takenIn(*fair.shop, toFair).added, 0);
    EXPECT_EQ(dumpOf(shop()), before);
    expectSame(shop(), *fair.shop);
}

TEST_F(SecondLaptop, TheWorkshopGivesOnlyWhatTheOtherDoesNotKnowYet) {
    Laptop& fair = aLaptop();
    takeTees();
    exchange(fair);
    takeTees();
    bring(fair); // by which the workshop hears that the first came through
    const auto path = newFileName();
    EXPECT_EQ(writeNews(shop(), path, fair.number)->entries, 1);
    EXPECT_EQ(takenIn(*fair.shop, path).added, 1);
    expectSame(shop(), *fair.shop);
}

TEST_F(SecondLaptop, NewsThatWasLostIsInTheNext) {
    Laptop& fair = aLaptop();
    takeTees();
    newsFrom(shop(), fair.number); // never arrives
    taken(*fair.shop, aDraft());
    newsFrom(*fair.shop); // nor does this
    taken(*fair.shop, aDraft());
    EXPECT_EQ(bring(fair).added, 2);
    EXPECT_EQ(fetch(fair).added, 1);
    expectSame(shop(), *fair.shop);
}

TEST_F(SecondLaptop, WhatWasDoneAtTheFairAfterItsNewsWasWrittenComesWithTheNext) {
    Laptop& fair = aLaptop();
    const auto order = taken(*fair.shop, aDraft());
    bring(fair);
    ASSERT_TRUE(changeNote(*fair.shop, order.id, "gift box").ok());
    ASSERT_TRUE(changeNote(shop(), order.id, "").ok());
    fetch(fair);
    EXPECT_EQ(textOf(*fair.shop, "SELECT note FROM shop_order WHERE number = 99000"), "gift box");
    EXPECT_EQ(entriesToBring(fair.shop->connection()), 1);
    exchange(fair);
    expectSame(shop(), *fair.shop);
    EXPECT_EQ(textOf(shop(), "SELECT note FROM shop_order WHERE number = 99000"), "gift box");
}

TEST_F(SecondLaptop, ThreeLaptopsHoldTheSameByWayOfTheWorkshop) {
    Laptop& fair = aLaptop("Fair laptop");
    Laptop& attic = aLaptop("Attic laptop");
    taken(*fair.shop, aDraft());
    taken(*attic.shop, aDraft());
    exchange(fair);
    exchange(attic);
    fetch(fair);
    expectSame(shop(), *fair.shop);
    expectSame(shop(), *attic.shop);
    EXPECT_EQ(numberOf(shop(), "SELECT COUNT(*) FROM shop_order"), 2);
}

TEST_F(SecondLaptop, WhatCameFromTheOtherCanBeTakenBackOnEither) {
    receiveCleanTees(1);
    Laptop& fair = aLaptop();
    const auto order = taken(*fair.shop, aDraft());
    exchange(fair);
    const auto back = shop().undo(shop().history(order.id, 1).at(0).id);
    ASSERT_TRUE(back.ok()) << back.error().message.english();
    EXPECT_EQ(numberOf(shop(), "SELECT COUNT(*) FROM shop_order"), 0);
    exchange(fair);
    EXPECT_EQ(numberOf(*fair.shop, "SELECT COUNT(*) FROM shop_order"), 0);
    ASSERT_TRUE(fair.shop->undo(*back).ok()) << "and done again on the other";
    exchange(fair);
    EXPECT_EQ(numberOf(shop(), "SELECT COUNT(*) FROM shop_order"), 1);
    expectSame(shop(), *fair.shop);
    expectWhole(shop());
    expectWhole(*fair.shop);
}

TEST_F(SecondLaptop, AClockThatIsWrongDoesNotPutWhatTakesBackBeforeWhatItTakesBack) {
    Laptop& fair = aLaptop("Fair laptop", -Hours{30}); // its clock is more than a day behind
    const auto order = takeTees();
    fetch(fair);
    ASSERT_TRUE(fair.shop->undo(fair.shop->recent(1).at(0).id).ok());
    ASSERT_TRUE(changeSettings(*fair.shop, loadFactsOf(fair.shop->connection(), {}).settings).ok());
    exchange(fair);
    expectWhole(shop());
    expectWhole(*fair.shop);
    EXPECT_EQ(numberOf(shop(), "SELECT COUNT(*) FROM shop_order"), 0) << order.number;
}

TEST_F(SecondLaptop, OrderNumbersRunOutWithAWordAndTheNextNewsBringsNewOnes) {
    Laptop& fair = aLaptop();
    Connection& there = fair.shop->connection();
    there.allowWriting(true);
    there.run("UPDATE seat_here SET next_order_number = 99999");
    there.allowWriting(false);
    EXPECT_EQ(orderNumbersLeft(there), 1);
    EXPECT_EQ(taken(*fair.shop, aDraft()).number, 99'999);
    EXPECT_EQ(orderNumbersLeft(there), 0);
    const auto refused = takeOrder(*fair.shop, aDraft(), now());
    ASSERT_FALSE(refused.ok());
    EXPECT_NE(refused.error().message.english().find("used up its order numbers"), std::string::npos);

    exchange(fair);
    EXPECT_EQ(orderNumbersLeft(there), 1000);
    EXPECT_EQ(taken(*fair.shop, aDraft()).number, 98'000);
    EXPECT_EQ(seats(connection())[0].lastOrderNumber, 97'999);
}

TEST_F(SecondLaptop, ALaptopThatWasPutBackFromAnOlderCopyGivesNoOrderNumberTwice) {
    Laptop& fair = aLaptop();
    const auto older = m_folder / "older.holdfast";
    ASSERT_TRUE(backup(*fair.shop, older).ok());
    EXPECT_EQ(taken(*fair.shop, aDraft()).number, 99'000);
    exchange(fair);
    auto back = opened(older);
    takenIn(*back, newsFrom(shop(), fair.number)); // what it knew is known no more: it is told all again
    EXPECT_EQ(taken(*back, aDraft()).number, 99'001);
}

TEST_F(SecondLaptop, ABigNewsFileIsTakenInBesideTheWindowToldAndStopped) {
    const auto path = m_folder / "workshop.holdfast";
    ASSERT_TRUE(backup(shop(), path).ok());
    auto window = opened(path);
    const auto copy = m_folder / "fair.holdfast";
    ASSERT_TRUE(makeCopyForLaptop(*window, copy, "Fair laptop").ok());
    auto fair = opened(copy);
    std::vector<ClimateReading> readings;
    for (int count = 0; count < 20'000; ++count)
        readings.push_back({now().instant - Minutes{count}, {21.0}, {40.0}});
    ASSERT_TRUE(importReadings(*fair, m_place, readings).ok());
    taken(*fair, aDraft());
    const auto news = newsFrom(*fair);

    auto beside = window->openBeside([this] { return now().instant; });
    ASSERT_TRUE(beside.ok());
    const Dump before = dumpOf(*window);
    const auto stopped = takeInNews(**beside, news, [](double) { return false; });
    EXPECT_FALSE(stopped.ok());
    EXPECT_EQ(dumpOf(*window), before);

    double last = -1;
    bool rises = true;
    const auto done = takeInNews(**beside, news, [&](double share) {
        rises &= share >= last && share <= 1;
        last = share;
        return true;
    });
    ASSERT_TRUE(done.ok()) << done.error().message.english();
    EXPECT_TRUE(rises);
    EXPECT_EQ(last, 1.0);
    ChangedTables heard;
    window->onChanged([&](const ChangedTables& tables) { heard = tables; });
    ASSERT_TRUE(window->catchUp(done->touched).ok());
    EXPECT_TRUE(heard.contains("climate_reading") && heard.contains("shop_order"));
    EXPECT_EQ(numberOf(*window, "SELECT COUNT(*) FROM climate_reading"), 20'000);
    taken(*window, aDraft());
    expectWhole(*window);
}

TEST_F(SecondLaptop, ACheckFindsAnEntryThatIsMissingInTheLine) {
    aLaptop();
    expectWhole(shop());
    connection().allowWriting(true);
    connection().run("UPDATE journal_line SET entry_id = entry_id + 1 WHERE place = 2");
    connection().run("DELETE FROM journal_line WHERE place = 1");
    connection().allowWriting(false);
    const auto findings = checkShop(shop());
    ASSERT_TRUE(findings.ok());
    ASSERT_EQ(findings->size(), 3U);
    EXPECT_EQ(findings->at(0), "The line of entries that the laptops share has gaps.");
    EXPECT_EQ(findings->at(1), "The entry in place 2 of the line that the laptops share is missing.");
    EXPECT_EQ(findings->at(2),
              "The line of entries that the laptops share is not as it was written from place 1 on.");
}

TEST_F(SecondLaptop, RollsThatBoreOneNumberBeforeAreToldApartWhenTheFileIsBroughtUpToDate) {
    const auto path = m_folder / "older.holdfast";
    const auto newer = m_folder / "newer.holdfast";
    {
        auto rolls = Shop::create(newer, [this] { return now().instant; });
        ASSERT_TRUE(rolls.ok());
        const auto film = addFilm(**rolls, aFilm("Dusk"));
        ASSERT_TRUE(film.ok());
        RollReceived roll = aRoll();
        roll.film = *film;
        roll.place = {};
        ASSERT_TRUE(receiveRoll(**rolls, roll, now()).ok() && receiveRoll(**rolls, roll, now()).ok());
        const auto older = Shop::create(path, [this] { return now().instant; }, schemaSteps().first(4));
        ASSERT_TRUE(older.ok());
    }
    {
        Connection older = Connection::open(path, Access::ReadWrite);
        older.script("ATTACH '" + newer.string() + "' AS newer");
        for (const std::string table : {"film", "film_not_for", "film_roll", "roll_move", "roll_stay",
                                        "journal_subject", "journal_entry"}) {
            // Columns that came later stay away.
            const std::string columns =
                textOf(older, "SELECT group_concat(name) FROM pragma_table_info('" + table + "', 'main')");
            older.script("INSERT INTO main." + table + " SELECT " + columns + " FROM newer." + table);
        }
        older.script("UPDATE seat_here SET last_id = (SELECT last_id FROM newer.seat_here);"
                     "UPDATE film_roll SET number = 1");
    }
    auto brought = opened(path);
    EXPECT_EQ(textOf(*brought, "SELECT group_concat(number) FROM (SELECT number FROM film_roll ORDER BY id)"),
              "1,2");
    expectWhole(*brought);
}

// SQLite's own program reads both files: what it dumps of the tables of the trade is the same, line by line.
TEST_F(SecondLaptop, TheDumpsOfSqlitesOwnProgramAreTheSame) {
    if (std::system("command -v sqlite3 > /dev/null") != 0)
        GTEST_SKIP() << "there is no sqlite3 here; tests/run.sh installs it";
    receiveCleanTees(2);
    Laptop& fair = aLaptop();
    takeTees(2);
    taken(*fair.shop, aDraft(2));
    exchange(fair);
    ASSERT_TRUE(backup(shop(), m_folder / "home.holdfast").ok());
    ASSERT_TRUE(backup(*fair.shop, m_folder / "fair.holdfast").ok());
    const auto dumped = [&](const std::string& name) {
        const auto out = m_folder / (name + ".sql");
        const std::string command = "sqlite3 '" + (m_folder / (name + ".holdfast")).string() +
                                    "' '.dump shop_order garment decal customer money_move lot_move "
                                    "blank_lot film film_roll roll_move "
                                    "roll_stay blank_style press setting' | sort > '" +
                                    out.string() + "'";
        EXPECT_EQ(std::system(command.c_str()), 0);
        return testing::bytesOf(out);
    };
    const std::string home = dumped("home");
    EXPECT_NE(home.find("INSERT INTO shop_order"), std::string::npos);
    EXPECT_EQ(home, dumped("fair"));
}

} // namespace
} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// Until when a backup has the name of a customer who was forgotten.
#include "db/actions/forget_customer.h"
#include "db/backups/backups.h"
#include "db/backups/backups_naming.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

namespace holdfast::db {
namespace {

class BackupsNamingTest : public Laptops {
protected:
    std::unique_ptr<Shop> shopWithACustomer() {
        auto known = opened(copyOf(shop()));
        const auto order = taken(*known, aDraft());
        m_customer = CustomerId{numberOf(*known, "SELECT customer_id FROM shop_order WHERE number = " +
                                                     std::to_string(order.number))};
        return known;
    }

    CustomerId m_customer;
};

// Each folder is thinned out by itself: what the other has pushes nothing out of it.
TEST_F(BackupsNamingTest, TheLastDayIsThatOfItsOwnFolder) {
    auto known = shopWithACustomer();
    const auto second = makeSecondFolder(known->path().parent_path());
    ASSERT_TRUE(second.ok()) << second.error().message.english();
    const LocalTime morning = LocalTime{localDate(2026, 10, 31)} + Hours{9};
    const LocalTime evening = morning + Hours{9};
    ASSERT_TRUE(makeBackup(*known, BackupReason::OfTheDay, morning).ok());
    ASSERT_TRUE(copyToSecondFolder(*known, *second, morning).ok());
    ASSERT_TRUE(makeBackup(*known, BackupReason::BeforeNews, evening).ok());
    const auto naming = backupsNaming(backupsOf(known->path(), *second), std::span{&m_customer, 1}, evening);
    ASSERT_EQ(naming.size(), 3U);
    for (const BackupNaming& each : naming) {
        // The newest of October there is kept among the twelve months.
        const bool isNewest = each.backup.at == evening || each.backup.path.parent_path() == *second;
        EXPECT_EQ(each.lastDay, isNewest ? localDate(2027, 9, 30) : localDate(2026, 11, 13))
            << each.backup.path;
    }
}

TEST_F(BackupsNamingTest, OneThatSomebodyWorkedInDoesNotGoByItself) {
    auto known = shopWithACustomer();
    const auto made = makeBackup(*known, BackupReason::OfTheDay, now().local());
    ASSERT_TRUE(made.ok());
    ASSERT_TRUE(Shop::open(made->backup.path, [this] { return now().instant; }).ok());
    const auto naming = backupsNaming(backupsOf(known->path()), std::span{&m_customer, 1}, now().local());
    ASSERT_EQ(naming.size(), 1U);
    EXPECT_EQ(naming[0].lastDay, std::nullopt);
}

// What was found not whole goes after its two weeks, for it is not among those of weeks and months.
TEST_F(BackupsNamingTest, OneThatIsNotWholeGoesAfterTwoWeeks) {
    auto known = shopWithACustomer();
    const auto made =
        makeBackup(*known, BackupReason::OfTheDay, LocalTime{localDate(2026, 11, 30)} + Hours{9});
    ASSERT_TRUE(made.ok());
    const auto path = freeBackupPath(made->backup.path.parent_path(), known->path(), made->backup.at,
                                     BackupReason::OfTheDay, false);
    std::filesystem::copy_file(made->backup.path, path);
    const auto naming = backupsNaming(backupsOf(known->path()), std::span{&m_customer, 1}, made->backup.at);
    ASSERT_EQ(naming.size(), 2U);
    for (const BackupNaming& each : naming)
        EXPECT_EQ(each.lastDay, each.backup.isWhole ? localDate(2027, 10, 31) : localDate(2026, 12, 13))
            << each.backup.path;
}

} // namespace
} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// What took many rows away leaves no empty file behind, counted in pages; the history keeps what was done.
#include "db/check/check.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class SpaceGivenBack : public SmallShop {
protected:
    std::int64_t pages() { return number("PRAGMA page_count"); }
    std::int64_t freePages() { return number("PRAGMA freelist_count"); }
    std::int64_t pagesOfEntries() {
        return number("SELECT SUM(LENGTH(changeset)) FROM journal_entry") / number("PRAGMA page_size");
    }

    void importReadings(std::int64_t count) {
        std::vector<ClimateReading> readings;
        for (std::int64_t back = count; back > 0; --back)
            readings.push_back({now().instant - Minutes{2} * back,
                                Celsius{19 + 0.001 * static_cast<double>(back % 3'000)},
                                Humidity{40 + 0.01 * static_cast<double>(back % 1'000)}});
        ASSERT_TRUE(db::importReadings(shop(), m_place, readings).ok());
    }
};

TEST_F(SpaceGivenBack, ByAnImportThatIsUndone) {
    const std::int64_t before = pages();
    importReadings(160'000);
    const EntryId import = shop().recent(1).front().id;
    const std::int64_t withReadings = pages();
    ASSERT_TRUE(shop().undo(import).ok());
    EXPECT_EQ(freePages(), 0);
    EXPECT_GT(withReadings, before + pagesOfEntries() / 2 + 1'000) << "the readings had pages of their own";
    // Import and undo stay in the history.
    EXPECT_LT(pages(), before + pagesOfEntries() * 21 / 20 + 50);
    const auto findings = checkShop(shop());
    ASSERT_TRUE(findings.ok());
    EXPECT_TRUE(findings->empty()) << findings->front();
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM climate_reading"), 160'000) << "it can be done again";
}

TEST_F(SpaceGivenBack, NotForAFewPagesThatTheNextActionTakes) {
    importReadings(20'000);
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_LT(freePages(), 1'024);
}

} // namespace
} // namespace holdfast::db

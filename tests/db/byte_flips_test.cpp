// SPDX-License-Identifier: GPL-3.0-or-later
// Any byte of a closed shop may go bad. Whatever it is, opening and checking end, and a shop of which a
// recorded row reads otherwise is never called whole. Every byte is tried by tests/long/run.sh byte_flips.
#include "db/journal/backup.h"
#include "tests/db/byte_flips.h"
#include "tests/db/small_shop.h"

#include <cstdlib>
#include <iostream>
#include <random>

namespace holdfast::db {
namespace {

using namespace testing;

constexpr std::size_t kFlips = 1'000;

class ByteFlips : public SmallShop {
protected:
    void SetUp() override {
        readyToPress(2);
        receiveCleanTees(4, "L");
        const OrderTaken undone = takeTees(1);
        takeTees(1);
        ASSERT_TRUE(shop().undo(shop().history(undone.id, 1).front().id).ok());
        ASSERT_TRUE(backup(shop(), m_path).ok());
        m_bytes = closedBytes();
        auto opened = Shop::openReadOnly(m_path, standingClock());
        ASSERT_TRUE(opened.ok()) << wordsOf(opened);
        m_before = rowsAsRead(**opened);
        ASSERT_EQ(*checkShop(**opened), std::vector<Sentence>{});
    }

    // As a window leaves it.
    std::string closedBytes() {
        (void)Shop::open(m_path, standingClock());
        return bytesOf(m_path);
    }

    struct Counts {
        std::size_t tried = 0;
        std::size_t refused = 0;
        std::size_t found = 0;
        std::size_t other = 0;
        std::size_t silent = 0;
    };

    void flip(std::size_t at, unsigned char mask) {
        SCOPED_TRACE("byte " + std::to_string(at) + " flipped by " + std::to_string(mask));
        const Flip flip = flipped(m_path, m_bytes, at, mask, m_before);
        EXPECT_FALSE(flip.isSilent());
        EXPECT_FALSE(flip.isEndless);
        ++m_counts.tried;
        m_counts.refused += flip.isRefused ? 1 : 0;
        m_counts.found += flip.isFound ? 1 : 0;
        m_counts.other += flip.isOther ? 1 : 0;
        m_counts.silent += flip.isSilent() ? 1 : 0;
    }

    void say() const {
        std::cout << m_counts.tried << " flips in " << m_bytes.size() << " bytes: " << m_counts.refused
                  << " refused at opening, " << m_counts.found << " found by the check, " << m_counts.other
                  << " with a row that reads otherwise, " << m_counts.silent << " of those called whole\n";
    }

    TemporaryFolder m_folder;
    std::filesystem::path m_path = m_folder / "shop.holdfast";
    std::string m_bytes;
    std::string m_before;
    Counts m_counts;
};

TEST_F(ByteFlips, NoneIsCalledWholeWhereARowReadsOtherwise) {
    std::mt19937_64 random{20261130};
    const char* chosen = std::getenv("HOLDFAST_FLIPS");
    const std::size_t flips = chosen != nullptr ? std::stoul(chosen) : kFlips;
    while (m_counts.tried < flips) {
        const std::size_t at = random() % m_bytes.size();
        const auto mask = static_cast<unsigned char>(1U << (random() % 8));
        // A new shop is mostly room for more: of that, one byte in fifty is tried.
        if (m_bytes[at] != 0 || random() % 50 == 0)
            flip(at, mask);
    }
    EXPECT_GT(m_counts.found + m_counts.refused, flips / 5);
    say();
}

// For tests/long: HOLDFAST_EVERY_BYTE, "0/4", tries the first of four parts of the file.
TEST_F(ByteFlips, NoByteOfTheFile) {
    const char* part = std::getenv("HOLDFAST_EVERY_BYTE");
    if (part == nullptr)
        GTEST_SKIP() << "tests/long/run.sh byte_flips tries every byte";
    std::size_t slash = 0;
    const std::size_t first = std::stoul(part, &slash);
    const std::size_t parts = std::stoul(std::string{part}.substr(slash + 1));
    for (std::size_t at = first; at < m_bytes.size(); at += parts)
        flip(at, static_cast<unsigned char>(1U << (at % 8)));
    say();
}

} // namespace
} // namespace holdfast::db

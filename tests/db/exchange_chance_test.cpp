// SPDX-License-Identifier: GPL-3.0-or-later
// Thousands of actions and takings back on two and three laptops, in an order that chance picks, with news
// carried whenever chance will, or lost: when all have all, all hold the same, nothing is below zero, and
// every entry that was made is either in the history or set aside by name.
#include "tests/db/acts_by_chance.h"

#include <gtest/gtest.h>

#include <set>

namespace holdfast::db {
namespace {

class LaptopsByChance : public ActsByChance {
protected:
    // What was made anywhere is known by its id; entries that news brought are those of the others.
    void noteEntriesOf(Shop& on) {
        for (const HistoryEntry& entry : on.recent(40))
            m_made.insert(entry.id.value);
    }

    void carry(Laptop& laptop) {
        if (below(5) == 0) { // written and lost
            newsFrom(*laptop.shop);
            newsFrom(shop(), laptop.number);
            return;
        }
        if (below(2) == 0)
            note(bring(laptop));
        else
            note(fetch(laptop));
    }

    void note(const NewsTakenIn& taken) {
        m_differences += taken.differences.size();
        for (const Difference& difference : taken.differences)
            EXPECT_FALSE(difference.words.empty()) << difference.title;
    }

    void run(const std::vector<Laptop*>& others, int actions) {
        m_first = shop().recent(1).front().id;
        for (int count = 0; count < actions && !HasFailure(); ++count) {
            const std::size_t which = below(others.size() + 1);
            Shop& on = which == 0 ? shop() : *others[which - 1]->shop;
            actOn(on);
            noteEntriesOf(on);
            if (below(12) == 0) {
                carry(*others[below(others.size())]);
                expectSoundOn(shop());
            }
        }
        for (int round = 0; round < 4; ++round) // what one takes in may make it say something
            for (Laptop* laptop : others) {
                note(bring(*laptop));
                note(fetch(*laptop));
            }
        for (Laptop* laptop : others) {
            expectSame(shop(), *laptop->shop);
            expectWhole(*laptop->shop);
            expectSoundOn(*laptop->shop);
        }
        expectWhole(shop());
        expectNothingLost();
    }

    void expectNothingLost() {
        std::set<std::int64_t> kept;
        Query rows =
            connection().query("SELECT id FROM journal_entry UNION ALL SELECT id FROM journal_aside");
        while (rows.step())
            kept.insert(rows.integer(0));
        std::size_t lost = 0;
        for (const std::int64_t entry : m_made)
            lost += !kept.contains(entry);
        EXPECT_EQ(lost, 0U);
    }

    std::set<std::int64_t> m_made;
    std::size_t m_differences = 0;
};

TEST_P(LaptopsByChance, TwoHoldTheSameInTheEnd) {
    run({&aLaptop("Fair laptop", -Hours{3})}, 500);
    EXPECT_GT(m_done, 150);
    EXPECT_GT(m_takenBack, 10);
    EXPECT_GT(m_differences, 3U) << "else chance has tested little";
}

TEST_P(LaptopsByChance, ThreeHoldTheSameInTheEnd) {
    Laptop& fair = aLaptop("Fair laptop", Minutes{90});
    Laptop& attic = aLaptop("Attic laptop", -Hours{50});
    run({&fair, &attic}, 400);
    EXPECT_GT(m_differences, 3U) << "else chance has tested little";
}

INSTANTIATE_TEST_SUITE_P(Chance, LaptopsByChance, ::testing::Range(1U, 1U + rounds(6)));

} // namespace
} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that come on top of known ones: whatever is done to them, going on from what is known gives what
// loading all of them does, or says that all must be loaded.
#include "tests/db/small_shop.h"

#include <random>

namespace holdfast::db {
namespace {

class ClimateGoneOn : public SmallShop {
protected:
    ClimateReading reading(int minutesAgo) const {
        return {now().instant - std::chrono::minutes{minutesAgo}, {20 + minutesAgo % 5 * 0.5}, {44}};
    }
    void known() { m_known = loadClimate(connection()); }
    // True: it went on, and rightly.
    bool goesOn() {
        const auto longer = climateGoneOn(connection(), m_known);
        if (longer)
            expectSame(*longer);
        return longer.has_value();
    }
    void expectSame(const ClimateHistory& history) {
        const ClimateHistory loaded = loadClimate(connection());
        ASSERT_EQ(history.size(), loaded.size());
        for (const auto& [place, series] : loaded)
            EXPECT_EQ(*history.at(place), *series);
    }
    void undoLast() { ASSERT_TRUE(shop().undo(shop().recent(1).at(0).id).ok()); }

    ClimateHistory m_known;
};

TEST_F(ClimateGoneOn, AReadingBehindTheLastIsAddedToWhatIsKnown) {
    ASSERT_TRUE(recordReading(shop(), m_place, reading(90)).ok());
    known();
    const auto other = m_known.at(m_place);
    ASSERT_TRUE(recordReading(shop(), m_place, reading(30)).ok());
    EXPECT_TRUE(goesOn());
    EXPECT_EQ(m_known.at(m_place), other) << "what was handed out is never changed";
}

TEST_F(ClimateGoneOn, TheFirstReadingOfAPlaceToo) {
    known();
    const PlaceId cellar = *addPlace(shop(), "Cellar");
    ASSERT_TRUE(recordReading(shop(), cellar, reading(30)).ok());
    EXPECT_TRUE(goesOn());
}

TEST_F(ClimateGoneOn, WhatComesBetweenOrIsTakenBackMustBeLoaded) {
    ASSERT_TRUE(recordReading(shop(), m_place, reading(30)).ok());
    known();
    ASSERT_TRUE(recordReading(shop(), m_place, reading(60)).ok());
    EXPECT_FALSE(goesOn());
    known();
    undoLast();
    EXPECT_FALSE(goesOn());
}

TEST_F(ClimateGoneOn, AnActionWithoutReadingsLeavesThemAsTheyWere) {
    ASSERT_TRUE(recordReading(shop(), m_place, reading(30)).ok());
    known();
    receiveTees(3);
    EXPECT_TRUE(goesOn());
}

TEST_F(ClimateGoneOn, WhateverIsDoneByChance) {
    std::mt19937 random{5};
    int wentOn = 0;
    for (int turn = 0; turn < 200; ++turn) {
        known();
        const int minutes = static_cast<int>(random() % 4000);
        if (random() % 4 == 0 && !shop().recent(1).empty() && !shop().recent(1).front().undoes)
            std::ignore = shop().undo(shop().recent(1).front().id);
        else if (random() % 3 == 0)
            std::ignore = importReadings(
                shop(), m_place, std::vector{reading(minutes + 3), reading(minutes + 2), reading(minutes)});
        else
            std::ignore = recordReading(shop(), random() % 2 == 0 ? m_place : m_damp, reading(minutes));
        wait(std::chrono::minutes{random() % 200});
        wentOn += goesOn() ? 1 : 0;
    }
    EXPECT_GT(wentOn, 20);
}

} // namespace
} // namespace holdfast::db

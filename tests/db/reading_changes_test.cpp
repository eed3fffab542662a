// SPDX-License-Identifier: GPL-3.0-or-later
// Readings that were noted wrongly are corrected or removed, one act and one undo each.
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

using Doing = Result<Done>;
using Removing = Result<std::int64_t>;

class ReadingChanges : public SmallShop {
protected:
    ReadingChanges() {
        std::vector<ClimateReading> log;
        for (int hour = 30; hour > 0; --hour)
            log.push_back({before(hour), {18.0 + hour % 5}, {44}});
        EXPECT_TRUE(importReadings(shop(), m_place, log).ok());
        EXPECT_TRUE(recordReading(shop(), m_damp, {before(1), {19}, {60}}).ok());
    }
    Instant before(int hours) const { return now().instant - Hours{hours}; }
    ClimateSeries readings() { return *loadClimate(connection()).at(m_place); }
};

TEST_F(ReadingChanges, AReadingIsCorrectedWhereItStands) {
    const ClimateReading wrong{now().instant, {68}, {44}};
    ASSERT_TRUE(recordReading(shop(), m_place, wrong).ok());
    const ClimateReading right{now().instant, {18}, {45}};
    expectUndoable<Doing>([&] { return correctReading(shop(), m_place, wrong.at, right); },
                          "Front shelf: reading corrected from 44 %, 68.0 °C to 45 %, 18.0 °C");
    EXPECT_EQ(readings().size(), 31U);
    EXPECT_EQ(readings().back(), right);
    EXPECT_EQ(loadClimate(connection()).at(m_damp)->size(), 1U) << "another place's is let alone";
}

TEST_F(ReadingChanges, ItsMomentToo) {
    const ClimateReading right{before(4) + Minutes{20}, {21}, {44}};
    expectUndoable<Doing>([&] { return correctReading(shop(), m_place, before(1), right); },
                          "Front shelf: reading corrected from 44 %, 19.0 °C to 44 %, 21.0 °C");
    EXPECT_EQ(readings().size(), 30U);
    EXPECT_EQ(readings().back().at, before(2));
}

TEST_F(ReadingChanges, WhatCannotBeIsRefusedWithItsField) {
    const ClimateReading right{before(1), {21}, {44}};
    const auto refused = [&](PlaceId place, Instant at, const ClimateReading& corrected,
                             const std::string& field, const std::string& words) {
        expectRefused<Doing>([&] { return correctReading(shop(), place, at, corrected); }, field, words);
    };
    refused(m_place, before(1), {before(2), {21}, {44}}, "at", "already");
    refused(m_place, before(1) + Minutes{1}, right, "at", "no reading of that moment");
    refused(m_place, before(1), {before(-1), {21}, {44}}, "at", "future");
    refused(m_place, before(1), {before(1), {81}, {44}}, "temperature", "80");
    refused(m_place, before(1), {before(1), {21}, {101}}, "humidity", "100");
    refused(m_place, before(1), {before(1), {19}, {44}}, "temperature", "Nothing was changed");
    refused(PlaceId{3}, before(1), right, "place", "");
}

TEST_F(ReadingChanges, OneOrARunOfThemIsRemoved) {
    expectUndoable<Removing>([&] { return removeReadings(shop(), m_place, before(7), before(7)); },
                             "Front shelf: reading removed, 44 %, 20.0 °C");
    EXPECT_EQ(readings().size(), 29U);
    expectUndoable<Removing>([&] { return removeReadings(shop(), m_place, before(20), before(5)); },
                             "15 readings of Front shelf removed");
    EXPECT_EQ(readings().size(), 14U);
    EXPECT_EQ(loadClimate(connection()).at(m_damp)->size(), 1U);
    expectRefused<Removing>([&] { return removeReadings(shop(), m_place, before(20), before(5)); }, "at");
}

TEST_F(ReadingChanges, TemperatureAloneIsKeptAsSuch) {
    const ClimateReading alone = readingOf(before(40), Celsius{21}, std::nullopt);
    expectUndoable<Result<ReadingsImported>>(
        [&] { return importReadings(shop(), m_place, std::vector{alone}); },
        "1 reading of Front shelf read in");
    EXPECT_EQ(readings().front(), alone);
    expectUndoable<Doing>([&] { return correctReading(shop(), m_place, alone.at, {alone.at, {21}, {48}}); },
                          "Front shelf: reading corrected from 21.0 °C to 48 %, 21.0 °C");
    EXPECT_EQ(readings().front().knownHumidity(), Humidity{48});
}

TEST_F(ReadingChanges, ALongRemovalIsStoppedWithNothingRemoved) {
    std::vector<ClimateReading> log;
    for (int minute = 25'000; minute > 0; --minute)
        log.push_back({before(40) - Minutes{minute}, {18}, {44}});
    ASSERT_TRUE(importReadings(shop(), m_place, log).ok());
    expectRefused<Removing>(
        [&] {
            return removeReadings(shop(), m_place, log.front().at, log.back().at,
                                  [](double share) { return share < 0.5; });
        },
        "", "Stopped");
    EXPECT_EQ(*removeReadings(shop(), m_place, log.front().at, log.back().at), 25'000);
    EXPECT_EQ(readings().size(), 30U);
    ASSERT_TRUE(shop().undo(shop().recent(1).at(0).id).ok());
    EXPECT_EQ(readings().size(), 25'030U);
}

} // namespace
} // namespace holdfast::db

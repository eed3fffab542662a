// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How old a roll is by warmth, when it should be used by, and how it was kept. An estimate from readings.
//
// Effective age A = ∫ Q10^((T(t) − T_ref)/10) dt from the made (or received) day to now; T(t) is the straight
// line between readings of the place the roll was in; unrecorded time counts at T_ref (see ageing.h).
// Use-by is the day on which A reaches the shelf life: a day that is past by the readings, where it stays; a
// day to come by the usual course of the storage place (see ageing_outlook.h), with the days by its fast and
// slow course. Never later than the printed day, and moved on by a passed test strip to at least the strip's
// day plus what it extends (until a later strip fails); these are facts. Exposure is hours outside the
// humidity and temperature bands since the last passed strip (see exposure.h).

#include "core/facts/climate.h"
#include "core/facts/film.h"
#include "core/facts/film_roll.h"
#include "core/facts/shop_facts.h"
#include "core/trade/day_span.h"

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast {

struct RollCondition {
    RollId roll;
    Days calendarAge{0};
    double effectiveDays = 0;          // age by warmth
    double unrecordedDays = 0;         // of the calendar age, counted at the reference temperature
    std::optional<LocalDate> useBy;    // none: no limit given
    std::optional<DaySpan> useByRange; // of a day to come by warmth: it lies within in eight of ten cases
    bool useByIsEstimate = false;      // by warmth; a printed day and that of a test strip are facts
    bool extendedByStrip = false;      // the use-by is the day that a passed test strip gives
    double humidityHoursOutside = 0;
    double temperatureHoursOutside = 0;
    double bothHoursOutside = 0;            // of these, outside both at once
    std::optional<ClimateReading> latest;   // of the place it is in now
    std::optional<Humidity> latestHumidity; // of the latest reading there that has one; none: not known
    bool humidityOutsideNow = false;
    bool temperatureOutsideNow = false;
    bool readingIsStale = false; // no reading within the shop's limit, or none at all
    bool hasPlace = true;
    bool stripFailed = false; // the last one that was pressed

    bool isPastAge(LocalDate today) const { return useBy && *useBy < today; }
    std::optional<Days> daysLeft(LocalDate today) const;
    // "estimated use-by", or "use-by" where it is a fact.
    Phrase useByName() const { return useByIsEstimate ? phrase("estimated use-by") : phrase("use-by"); }
    // Outside either; an hour outside both is one hour.
    double hoursOutside() const { return humidityHoursOutside + temperatureHoursOutside - bothHoursOutside; }
    bool isOutsideNow() const { return humidityOutsideNow || temperatureOutsideNow; }
    bool isBadlyKept(const Film& film) const; // outside now, or longer outside than allowed
    bool mayBeUsed(const Film& film, LocalDate today) const;
};

class RollConditions {
public:
    RollConditions() = default;
    explicit RollConditions(std::map<RollId, RollCondition> conditions)
        : m_conditions(std::move(conditions)) {}
    // REQUIRES: the roll was reckoned.
    const RollCondition& at(RollId roll) const { return m_conditions.at(roll); }
    const RollCondition* find(RollId roll) const;
    auto begin() const { return m_conditions.begin(); }
    auto end() const { return m_conditions.end(); }

private:
    std::map<RollId, RollCondition> m_conditions;
};

// Running sums over a place's readings, so that a roll's age and exposure over any span cost two look-ups.
// Built once for each place, model and band; kept between reckonings (its parts are found by the series they
// were built from). Not shared between threads.
class ClimateReckoner {
public:
    ClimateReckoner();
    ~ClimateReckoner();
    ClimateReckoner(ClimateReckoner&&) noexcept;
    ClimateReckoner& operator=(ClimateReckoner&&) noexcept;

    // Asked before each roll with the share that is done; false: no more of them are wanted. May be empty.
    using GoesOn = std::function<bool(double share)>;

    // Every roll in the facts. A roll may take a tenth of a second where its place has a million readings
    // that were not summed up before.
    RollConditions reckon(const ShopFacts& facts, const ClimateHistory& climate, const Now& now,
                          const GoesOn& goesOn = {});

private:
    struct Sums;
    std::unique_ptr<Sums> m_sums;
};

} // namespace holdfast

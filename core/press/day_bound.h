#pragma once
// What a day can at best still come to, from where it stands: lets a search through every order leave out
// most.

#include "core/press/day_plan_simulation.h"

#include <cstdint>
#include <span>
#include <vector>

namespace holdfast {

class DayBound {
public:
    explicit DayBound(const TimedDay& day)
        : m_day(day) {}

    // No day that goes on from this state, whatever the order of the jobs that it has not been given, has a
    // better score. The greater of three sums of lateness: each garment by itself; all on one pair of hands;
    // all on one platen, where there is but one, with the changes of temperature they cannot do without.
    DayScore least(const DayState& state, std::span<const std::size_t> notGiven);

private:
    struct Left {
        std::size_t job = 0;
        std::size_t step = 0;
        std::int64_t from = 0;
    };

    void list(const DayState& state, std::span<const std::size_t> notGiven);
    double aloneLateness() const;
    double handsLateness(const DayState& state);
    double platenLateness(const DayState& state);
    void countChanges(const DayState::Platen& platen);
    double inTurn(std::int64_t from, bool hasChanges);

    const TimedDay& m_day;
    std::vector<Left> m_left;
    double m_lightest = 0;
    std::vector<std::int64_t> m_work;
    std::vector<std::int64_t> m_due;
    std::vector<std::size_t> m_needing;      // by heat: garments that end on the platen at it
    std::vector<std::int64_t> m_changeInto;  // least seconds, of the other heats needed, rising
    std::vector<std::size_t> m_othersCounts; // of those heats, falling
    std::size_t m_asItIs = 0;                // garments that need no change
};

} // namespace holdfast

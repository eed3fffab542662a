#pragma once
// What a day can at best still come to, from where it stands: lets a search through every order leave out
// most.

#include "core/press/day_plan_simulation.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

class DayBound {
public:
    explicit DayBound(const TimedDay& day)
        : m_day(day) {}

    // No day that goes on from this state, whatever the order of the jobs that it has not been given, has a
    // better score. The greatest of three sums of lateness: each garment by itself; all on one pair of hands;
    // those of each platen one after another there, with the changes of temperature they cannot do without.
    DayScore least(const DayState& state, std::span<const std::size_t> notGiven);

private:
    struct Left {
        std::size_t job = 0;
        std::size_t step = 0;
        std::int64_t from = 0;
        std::optional<std::size_t> platen; // none: it may still be pressed on another
    };

    void list(const DayState& state, std::span<const std::size_t> notGiven);
    double latenessAlone(const Left& left) const;
    double latenessOnHands(const DayState& state);
    double latenessOnPlaten(const DayState& state, std::size_t platen);
    void take(const Left& left, std::int64_t work);
    void listChanges(std::size_t platen);
    double inTurn(std::int64_t from) const;

    const TimedDay& m_day;
    std::vector<Left> m_left;
    // What is done one after another.
    std::vector<std::int64_t> m_work;
    std::vector<std::int64_t> m_due;
    double m_lightest = 0;
    // The changes of temperature between: how many garments can be done without, and with each one more.
    std::size_t m_asItIs = 0;
    std::vector<std::size_t> m_needing;      // by heat, garments that are last pressed at it
    std::vector<std::int64_t> m_changeInto;  // least seconds, of the other heats needed, rising
    std::vector<std::size_t> m_othersCounts; // of those heats, falling
};

} // namespace holdfast

#pragma once
// Orders of a day tried one after another, each unlike a settled one in a stretch only. What comes before the
// stretch is not run through again; and where the day stands behind it as it stood before, only earlier or
// later, the rest is known too.

#include "core/press/day_plan_simulation.h"
#include "core/press/order_search.h"

#include <cstdint>
#include <span>
#include <vector>

namespace holdfast {

class DayTrials {
public:
    explicit DayTrials(const TimedDay& day)
        : m_day(day)
        , m_simulation(day) {}

    // REQUIRES: an order cleaned by the day.
    void settle(std::span<const std::size_t> order);
    const DayScore& score() const { return m_score; }
    std::span<const std::size_t> order() const { return m_order; }

    // Of the settled order once the move is carried out; where that is not below the limit, some score that
    // is not below it. REQUIRES: the move keeps garments under way before the others.
    DayScore after(const OrderMove& move, const DayScore& limit);

    // Garments run through so far, the measure of what was spent.
    std::uint64_t garmentsRun() const { return m_garmentsRun; }

private:
    std::optional<DayScore> asBefore(std::size_t given) const;

    const TimedDay& m_day;
    DaySimulation m_simulation;
    std::vector<std::size_t> m_order;
    std::vector<DayState> m_before;  // by place: as the day stands when its garment is asked for
    std::vector<std::int64_t> m_end; // by place
    DayScore m_score;
    std::vector<std::size_t> m_tried;
    std::uint64_t m_garmentsRun = 0;
};

// Nothing that is still to come from this state on can make its score better than this.
DayScore leastFrom(const DayState& state);

} // namespace holdfast

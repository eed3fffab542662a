// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Orders of a day tried one after another, each unlike a settled one in a stretch only. What comes before the
// stretch is not run through again; and where the day is as it was in the settled order, only earlier
// or later, what follows is known too: the rest of the day, or the garments up to where the stretch goes on
// otherwise.

#include "core/press/day_course.h"
#include "core/press/order_search.h"

#include <cstdint>
#include <span>
#include <vector>

namespace holdfast {

class DayTrials {
public:
    explicit DayTrials(const TimedDay& day)
        : m_day(day)
        , m_settling(m_day)
        , m_trying(m_day) {}

    DayTrials(const DayTrials&) = delete;
    DayTrials& operator=(const DayTrials&) = delete;

    // What the order begins with as the one settled before did is not run through again. REQUIRES: an order
    // cleaned by the day, of the same garments each time.
    void settle(std::span<const std::size_t> order);
    const DayScore& score() const { return m_score; }
    std::span<const std::size_t> order() const { return m_order; }
    // When the garment at each place is done, in seconds from the start.
    std::span<const std::int64_t> ends() const { return m_end; }

    // Of the settled order once the move is carried out; where it is later than the most that is of interest,
    // something later than that. REQUIRES: the move keeps garments under way before the others.
    DayScore after(const OrderMove& move, double mostLateness);

    // Garments run through so far, the measure of what was spent.
    std::uint64_t garmentsRun() const { return m_garmentsRun; }

private:
    // Places of the settled order that are asked for at other places, one after another.
    struct Stretch {
        std::size_t begin = 0;
        std::size_t end = 0;
        std::size_t asked = 0; // the place at which the first of them is
    };

    bool runThrough(const Stretch& stretch, double mostLateness);
    bool sharedAsBefore(std::size_t to) const;
    void settleAsBefore(std::size_t from);
    bool standsAsBefore(std::size_t settled, std::size_t asked) const;
    bool isLeftAt(const CourseState& state, std::size_t place) const;
    void addEnds(DayScore& score, std::size_t from, std::size_t to, std::int64_t shift) const;
    void goOnAsBefore(std::size_t from, std::size_t to, std::size_t asked);

    CourseDay m_day;
    DayCourse m_settling;
    DayCourse m_trying;
    std::vector<std::size_t> m_order;
    // By place: the state of the day when its garment is asked for, and the end.
    std::vector<CourseState> m_before;
    std::vector<std::int64_t> m_end;         // by place; so is
    std::vector<CourseDay::Number> m_platen; // the one that the garment was given to
    CourseState m_jumped;
    DayScore m_score;
    std::uint64_t m_garmentsRun = 0;
};

} // namespace holdfast

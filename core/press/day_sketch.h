// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A day at the press in outline: what an order roughly costs, some thirty times quicker than a true run
// (day_plan_simulation.h). Lets a search pass over moves that are not worth a true trial.
//
// Each garment takes its platen for one stretch of time, and is done some time after that. Both are learned
// from days that were run through: the stretch as a linear function of its platen, hand and waiting time
// (least squares over all stretches seen) corrected by half of what was seen of this garment; the time after
// it as the mean of what was seen. Changes of temperature, and which platen a garment goes to, are exact.

#include "core/press/day_plan_simulation.h"
#include "core/press/order_search.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace holdfast {

// What a search weighs, in weighted seconds: of orders that are as late the one that ends sooner is better.
inline double searchCost(double lateness, double end) {
    return lateness + 0.01 * end;
}

class DaySketch {
public:
    explicit DaySketch(const TimedDay& day);

    // Learns from an order that was run through.
    void learn(const DayRecord& record);
    // From here on moves are judged from this order.
    void settle(std::span<const std::size_t> order);
    // The same, with the ends of its garments known: the sketch then gives this order its true cost.
    void settle(std::span<const std::size_t> order, std::span<const std::int64_t> ends);

    std::span<const std::size_t> order() const { return m_order; }
    double cost() const { return searchCost(m_sumsBefore.back().lateness, m_sumsBefore.back().ends); }
    // Once the move is carried out; where that is above the limit, something above it.
    double after(const OrderMove& move, double limit);
    void carryOut(const OrderMove& move);

    // The temperature that the garment at a place is first pressed at, as a number.
    std::size_t heatAt(std::size_t place) const { return m_outlines[m_order[place]].firstHeat; }
    std::uint64_t garmentsRun() const { return m_garmentsRun; }

private:
    static constexpr std::size_t kFeatures = 4; // one, platen, hands, waiting
    using Features = std::array<double, kFeatures>;

    // Of a garment, what is looked at most.
    struct Outline {
        double stretch = 0;
        double after = 0;
        double due = 0;
        double weight = 0;
        double work = 0;
        std::uint32_t firstHeat = 0;
        std::uint32_t lastHeat = 0; // the number after the last: it leaves the platen as it is
        std::uint32_t onlyPlaten = kAnyPlaten;
    };
    static constexpr std::uint32_t kAnyPlaten = static_cast<std::uint32_t>(-1);

    // What was learned of it.
    struct Lesson {
        Features features{};
        double within = 0; // changes of temperature between its own steps
        // Means over the days seen, the last ones counting for more.
        double unexplained = 0;
        double meanAfter = 0;
        int seen = 0;
    };

    struct Platen {
        double freeAt = 0;
        double sharedUntil = 0; // as in DayState
        std::uint32_t heat = 0;
    };

    // Of a settled place: what it is late by, below nothing if it is early.
    struct Lateness {
        double by = 0;
        double weight = 0;
    };

    struct Sums {
        double lateness = 0;
        double ends = 0;
    };

    double changeOn(std::size_t platen, std::size_t from, std::size_t to) const {
        return m_changes[(platen * m_heats + from) * m_heats + to];
    }
    void begin(std::size_t place);
    template <std::size_t kPlatens>
    std::size_t give(const Outline& outline, Platen* platens, Sums& sums) const;
    std::size_t give(std::size_t job);
    bool giveAll(std::size_t begin, std::size_t end, double limit, bool isRest);
    template <std::size_t kPlatens>
    bool giveThem(std::size_t begin, std::size_t end, double limit, bool isRest);
    template <std::size_t kPlatens>
    bool shareAsBefore(const Platen* platens, std::size_t place) const;
    template <std::size_t kPlatens>
    void addShifted(const Platen* platens, std::size_t place, Sums& sums) const;
    void settleFrom(std::size_t place);
    double changesWithin(const TimedJob& job, std::size_t platen) const;
    Features fitted() const;

    const TimedDay& m_day;
    std::size_t m_heats; // one more than the day has: the last means any
    std::vector<double> m_changes;
    std::vector<Outline> m_outlines; // by job, and so are
    std::vector<Lesson> m_lessons;
    std::array<Features, kFeatures> m_products{};
    Features m_sums{};
    std::vector<std::size_t> m_order;
    std::vector<Sums> m_sumsBefore;      // by place, and the end
    std::vector<Platen> m_platensBefore; // the same, one after the other for each place
    std::vector<Lateness> m_late;        // by place, and so is
    std::vector<std::uint32_t> m_platenOf;
    Sums m_sumsNow;
    std::vector<Platen> m_platens; // now
    std::uint64_t m_garmentsRun = 0;
};

} // namespace holdfast

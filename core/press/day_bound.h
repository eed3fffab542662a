// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a day can at best still come to, from where it is: lets a search through every order leave out
// most.

#include "core/press/day_plan_simulation.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

class DayBound {
public:
    explicit DayBound(const TimedDay& day);

    // No day that goes on from this state, whatever the order of the jobs that it has not been given, has a
    // better score. Lateness and end are the greatest of what each garment needs by itself, after those that
    // come to its platen before it; what all need of one pair of hands; those of each platen there, with the
    // changes of temperature they cannot do without; and all of the platens together. The last two are
    // reckoned for all that is left, and for what is not given yet after the rest.
    DayScore least(const DayState& state, std::span<const std::size_t> notGiven);

private:
    struct Left {
        std::size_t job = 0;
        std::size_t step = 0;
        std::int64_t endsAlone = 0;        // no sooner, whatever the others do
        std::optional<std::size_t> platen; // none: it may still be pressed on another
        bool isGiven = false;
    };

    // When a platen is done with the first sittings of all that it was given.
    struct Behind {
        std::int64_t taken = 0; // the last of them has come to it: the next is taken up
        std::int64_t free = 0;
        std::size_t heat = 0;
    };

    // The sums are kept apart until the greatest is taken.
    struct Least {
        double lateness = 0;
        std::int64_t ends = 0;

        void add(const Least& other);
    };

    // What goes one after another over the hands, or over a platen: by the time it takes there, and how soon
    // it must have been there to be done in time.
    struct Queue {
        std::vector<std::int64_t> work;
        std::vector<std::int64_t> due;
        double lightest = 0;
        std::int64_t leastTail = 0; // that comes after it at least, whichever goes last

        void clear();
        void add(std::int64_t takes, const TimedJob& job, std::int64_t tail);
        void settle();
    };

    void list(const DayState& state, std::span<const std::size_t> notGiven);
    void listGiven(const DayState& state, std::size_t platen);
    std::int64_t endBehind(std::size_t job, std::size_t platen) const;
    template <class Counts>
    Least alone(Counts counts) const;
    Least onHands(const DayState& state);
    Least onPlaten(std::size_t platen, const Behind& from, bool isNotGivenOnly);
    Least onAllPlatens(bool isNotGivenOnly);
    int leastChanges(const DayState& state);
    void listChanges(std::size_t platen);
    Least inTurn(std::int64_t from) const;
    double latenessAlone(const Left& left) const { return m_day.latenessOf(left.job, left.endsAlone); }

    const TimedDay& m_day;
    // By job: what comes after its last hand work, and after it last leaves the platen.
    std::vector<std::int64_t> m_afterHands;
    std::vector<std::int64_t> m_afterPlaten;
    std::vector<std::int64_t> m_firstSitting; // by job: how long it first lies on the platen
    std::vector<Left> m_left;
    std::vector<Behind> m_now;    // by platen: as it is
    std::vector<Behind> m_behind; // by platen
    Queue m_queue;
    // The changes of temperature between: how many garments can be done without, and with each one more.
    std::size_t m_asItIs = 0;
    std::vector<std::size_t> m_needing;      // by heat, garments that are last pressed at it
    std::vector<std::int64_t> m_changeInto;  // least seconds, of the other heats needed, rising
    std::vector<std::size_t> m_othersCounts; // of those heats, falling
    std::vector<bool> m_isThere;             // by heat: some platen is at it, or will be
    std::vector<bool> m_isNeeded;            // by heat
    std::vector<std::int64_t> m_free;        // by platen, rising
};

} // namespace holdfast

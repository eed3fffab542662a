// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day at the press run through from step to step, by the rules of day_plan_timing.h.
//
// The order is given garment by garment: a simulation runs as far as those that it knows reach, so that
// orders which begin alike share their beginning. Its present state is a value, DayState.

#include "core/press/day_plan_timing.h"

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// A garment on a platen from when it is loaded until it is lifted off.
struct Sitting {
    std::size_t platen = 0;
    std::size_t job = 0;
    double temperature = 0;
    std::int64_t begins = 0;
    std::int64_t ends = 0;
};

struct HeatChange {
    std::size_t platen = 0;
    std::optional<double> from; // none: from cold
    std::int64_t begins = 0;
    std::int64_t takes = 0;
};

// What happened, in seconds from the start. Sittings and changes of one platen are in their order of time.
struct DayRecord {
    struct Garment {
        std::size_t platen = 0;
        double temperature = 0; // its platen's when it was taken up
        std::int64_t begins = 0;
        std::int64_t ends = 0;
    };

    struct Span {
        std::size_t job = 0;
        std::size_t step = 0;
        Resource resource = Resource::Hands;
        std::int64_t begins = 0;
        std::int64_t ends = 0;
    };

    std::vector<std::size_t> jobs; // in the order they were asked for
    std::vector<Garment> garments; // beside jobs
    std::vector<Sitting> sittings;
    std::vector<HeatChange> changes;
    std::vector<Span> spans;
};

inline constexpr std::int64_t kNever = std::numeric_limits<std::int64_t>::max();

// Everything that the rest of the day depends on. What is added here is to be compared in day_memory.cpp,
// too. DayCourse does the same more quickly: a change here needs the same change there.
struct DayState {
    struct Garment {
        std::size_t place = 0; // in the order: who goes first
        std::size_t job = 0;
        std::size_t next = 0; // step
        std::int64_t readyAt = 0;
        std::int64_t begins = -1;
        bool hasBeenOnPlaten = false;
        const TimedStep* step = nullptr;     // the next one; none: done
        const TimedStep* onPlaten = nullptr; // the next one that uses the platen
    };

    // What the garments begun on a platen still ask of it. Follows from them and its temperature.
    struct Demand {
        bool isNeededAsItIs = false;
        bool isPreparing = false;           // one has not come to the platen yet
        std::size_t other = kAnyHeat;       // the first other temperature asked for
        std::int64_t otherReadyAt = kNever; // the first of them is ready for it
    };

    struct Platen {
        std::size_t heat = 0;
        bool isCold = false; // not warmed up yet
        std::int64_t steadyAt = 0;
        std::int64_t freeAt = 0;
        std::int64_t opensAt = 0;
        std::int64_t heldSince = 0;
        std::optional<std::size_t> holder; // place of the garment that lies there
        std::vector<Garment> queue;        // not begun, in their order
        std::vector<Garment> begun;        // in their order, not done
        Demand demand;                     // of those begun
        std::size_t toCome = 0;            // garments it serves that the simulation has not been given
        std::int64_t sharedUntil = 0;      // busy until then with what it was given, waits left out
        std::size_t sharedHeat = 0;        // that this leaves it at
    };

    std::vector<Platen> platens;
    std::int64_t now = 0;
    std::int64_t handsFreeAt = 0;
    std::int64_t handWorkLeft = 0; // attended seconds of all garments, given or not
    std::size_t given = 0;
    DayScore score; // of what is done
};

class DaySimulation {
public:
    // `record` may be null, where only the score is asked for.
    explicit DaySimulation(const TimedDay& day, DayRecord* record = nullptr)
        : m_day(day)
        , m_record(record) {}

    // To the start of a day on which these jobs, in whatever order, will be given.
    void begin(std::span<const std::size_t> jobs);
    // The state of a simulation of this day. Nothing before it is recorded.
    void begin(const DayState& state) { m_state = state; }
    // The next garment of the order. Those under way come before all others.
    void give(std::size_t job);
    // As far as can be known without knowing what is given next; to the end, once all are given. No further,
    // though, than until the lateness is beyond the most that is of interest.
    void run(double mostLateness = std::numeric_limits<double>::infinity());

    const DayState& state() const { return m_state; }

private:
    using Garment = DayState::Garment;
    using Platen = DayState::Platen;

    // What comes next of all that can: a garment goes on, by its place in the lists of its platen, or a
    // platen changes its temperature.
    struct Event {
        std::int64_t at = kNever;
        std::size_t platen = 0;
        std::size_t index = 0;
        std::size_t place = 0;
        bool isChange = false;
        bool isTakenUp = false;  // from the queue
        bool isOnPlaten = false; // it lies there
    };

    void moveOn(Garment& garment, std::size_t step) const;
    std::size_t quickestPlaten(const TimedJob& job) const;
    bool waitsForTheNextGiven() const;
    bool isAllDone() const;
    void assess(Platen& platen) const;
    std::int64_t changesAt(const Platen& platen) const;
    std::int64_t startsAt(const Platen& platen, const Garment& garment, std::int64_t readyAt) const;
    std::int64_t takesUpNextAt(const Platen& platen) const;
    Event nextEvent() const;
    void change(std::size_t platen);
    void start(const Event& event);
    void takePlaten(std::size_t platen, Garment& garment, const TimedStep& step);
    void finish(std::size_t platen, const Garment& garment);
    void note(const Garment& garment, Resource resource, std::int64_t begins, std::int64_t ends);

    const TimedDay& m_day;
    DayRecord* m_record;
    DayState m_state;
};

} // namespace holdfast

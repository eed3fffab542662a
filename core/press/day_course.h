// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Runs through a day at the press as DaySimulation does, to the same score (tests/core/day_course_test.cpp
// compares the two), in less than half the time: for a search that tries many thousand orders of one day. It
// records nothing but when each garment is done.
//
// It is quicker because all steps are in one array, because a wait that needs neither hands nor platen is
// part of the step before it, and because what may come next on a platen is worked out only when that platen
// changes.

#include "core/press/day_plan_timing.h"

#include <cstdint>
#include <limits>
#include <span>
#include <vector>

namespace holdfast {

// The garments of a day as DayCourse needs them: made once for all orders.
class CourseDay {
public:
    using Number = std::uint32_t;
    static constexpr Number kNone = std::numeric_limits<Number>::max();

    // One step of a garment. Its last one only says that it is done.
    struct Step {
        std::int64_t attended = 0;
        std::int64_t platen = 0;
        std::int64_t after = 0;     // waits that follow
        std::int64_t handsLead = 0; // it may begin so long before the hands are free
        Number heat = 0;            // kNone: as the platen is
        Number nextHeat = 0;        // of the next step that uses the platen, this one included
        bool usesPlaten = false;
        bool keepsPlaten = false;
        bool isNextOnPlaten = false; // there is such a step
        bool isDone = false;
    };

    struct Job {
        Number firstStep = 0;
        Number firstHeat = 0;
        Number lastHeat = 0;    // kNone: it leaves the platen as it is
        Number firstPlaten = 0; // where its platens begin in the list
        Number platens = 0;     // how many serve it
        bool isUnderway = false;
        bool hasBeenOnPlaten = false;
        bool isOnPlaten = false;
        std::int64_t work = 0;
        std::int64_t due = 0;
        double weight = 0;
    };

    explicit CourseDay(const TimedDay& day);

    const TimedDay& day() const { return m_day; }
    const Job& job(std::size_t number) const { return m_jobs[number]; }
    const Step& firstStepOf(std::size_t number) const { return m_steps[m_jobs[number].firstStep]; }
    std::span<const Number> platensOf(const Job& job) const {
        return std::span{m_platens}.subspan(job.firstPlaten, job.platens);
    }
    std::int64_t changeOn(std::size_t platen, Number from, Number to) const {
        return to == kNone ? 0 : m_changes[(platen * m_heats + from) * m_heats + to];
    }

private:
    void addSteps(const TimedJob& job);

    const TimedDay& m_day;
    std::size_t m_heats = 0;
    std::vector<Step> m_steps;
    std::vector<Job> m_jobs;
    std::vector<Number> m_platens;
    std::vector<std::int64_t> m_changes; // by platen, from, to
};

// Everything that the rest of the day depends on. What is added here must be compared in day_trials.cpp, too.
struct CourseState {
    using Number = CourseDay::Number;
    static constexpr Number kNone = CourseDay::kNone;

    // Begun and not done.
    struct Garment {
        const CourseDay::Step* step = nullptr; // the next one
        std::int64_t readyAt = 0;
        Number place = 0;
        Number job = 0;
        bool hasBeenOnPlaten = false;
    };

    struct Platen {
        std::int64_t steadyAt = 0;
        std::int64_t freeAt = 0;
        std::int64_t opensAt = 0;
        std::int64_t sharedUntil = 0;
        const CourseDay::Step* frontStep = nullptr; // the first of the garment at its front
        Number heat = 0;
        Number sharedHeat = 0;
        Number holder = kNone; // place of the garment that lies there
        Number front = kNone;  // place of the first garment given to it and not begun
        Number toCome = 0;
        bool isCold = false;
        std::vector<Garment> begun; // in order of place
    };

    std::vector<Platen> platens;
    std::int64_t now = 0;
    std::int64_t handsFreeAt = 0;
    Number given = 0;
    DayScore score; // of what is done
};

class DayCourse {
public:
    using Number = CourseDay::Number;
    static constexpr Number kNone = CourseDay::kNone;

    explicit DayCourse(const CourseDay& day)
        : m_day(day) {}

    // As in DaySimulation.
    void begin(std::span<const std::size_t> jobs);
    void give(std::size_t job);
    void run(double mostLateness = std::numeric_limits<double>::infinity());

    // Goes on from a state of another course; all places move on by `further`.
    void begin(const CourseState& state, const DayCourse& of, Number further);

    const CourseState& state() const { return m_state; }
    // Of a garment that was given.
    Number jobAt(Number place) const { return m_places[place].job; }
    Number platenAt(Number place) const { return m_places[place].platen; }
    std::int64_t endAt(Number place) const { return m_places[place].ends; }
    void setEndAt(Number place, std::int64_t ends) { m_places[place].ends = ends; }

private:
    using Garment = CourseState::Garment;
    using Platen = CourseState::Platen;
    using Step = CourseDay::Step;

    struct Place {
        Number job = 0;
        Number platen = 0;
        std::int64_t ends = 0;
    };

    // What may come next on a platen: a garment begun goes on, the next is taken up, or the temperature
    // changes.
    struct Candidate {
        std::int64_t from = 0;      // not before this, by the state of its platen
        std::int64_t handsLead = 0; // of its step; so is
        std::int64_t attended = 0;
        std::int64_t before = 0; // only before this
        std::uint64_t rank = 0;  // of those at the same time the lowest goes first
        Number platen = 0;
        Number index = 0; // of the garment among those begun
    };

    template <Number kPlatens>
    void runOn(double mostLateness);
    template <Number kPlatens>
    std::int64_t clearOfOpenings(std::int64_t at, std::int64_t attended) const;
    template <Number kPlatens>
    const Candidate* next(std::int64_t& at) const;
    Number sharedTo(const CourseDay::Job& job) const;
    void setFront(Platen& platen, Number place);
    void assess(Number platen);
    void assessAll();
    void change(Number platen);
    void takeUp(Number platen);
    void goOn(Number platen, Number index);

    const CourseDay& m_day;
    CourseState m_state;
    std::vector<Place> m_places;
    // By platen. Only the first m_counts of each are valid; the rest keeps its memory.
    std::vector<std::vector<Candidate>> m_candidates;
    std::vector<Number> m_counts;
    Number m_starving = 0; // platens that need a garment not given yet
};

} // namespace holdfast

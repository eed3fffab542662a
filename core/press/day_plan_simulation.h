#pragma once
// The day at the press run through from step to step, by the rules of day_plan_timing.h.

#include "core/press/day_plan_timing.h"

#include <cstdint>
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

// What happened, in seconds from the start. Sittings and changes of one platen stand in their order of time.
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

class DaySimulation {
public:
    // `record` may be null, where only the score is asked for. REQUIRES: an order cleaned by the day.
    DaySimulation(const TimedDay& day, std::span<const std::size_t> order, DayRecord* record);

    DayScore run();

private:
    static constexpr std::size_t kNobody = static_cast<std::size_t>(-1);

    struct Garment {
        const TimedJob* job = nullptr;
        std::size_t platen = 0;
        std::size_t next = 0; // step
        std::int64_t readyAt = 0;
        std::int64_t begins = -1;
        bool hasBeenOnPlaten = false;

        const TimedStep& step() const { return job->steps[next]; }
        bool isDone() const { return next == job->steps.size(); }
        // The step it next needs the platen for; null: none any more.
        const TimedStep* nextOnPlaten() const;
    };

    struct Platen {
        double temperature = 0;
        bool isCold = false; // not warmed up yet
        std::int64_t steadyAt = 0;
        std::int64_t freeAt = 0;
        std::int64_t opensAt = 0;
        std::int64_t heldSince = 0;
        std::size_t holder = kNobody;
        std::vector<std::size_t> queue; // garments not begun, in their order
        std::size_t queueFront = 0;
        std::vector<std::size_t> begun; // in their order, not done

        bool suits(const TimedStep& step) const {
            return !step.temperature || *step.temperature == temperature;
        }
        bool hasNext() const { return queueFront < queue.size(); }
        std::size_t next() const { return queue[queueFront]; }
    };

    struct Demand {
        bool isNeededAsItIs = false;
        bool isPreparing = false;    // one has not come to the platen yet
        bool isOtherReady = false;   // one stands ready for another temperature
        std::optional<double> other; // the first other temperature asked for
    };

    void shareOutToPlatens();
    Demand demandOn(const Platen& platen) const;
    void decide(std::size_t platen);
    bool mayTakeUpNext(const Platen& platen, const Demand& demand) const;
    void change(std::size_t platen, double temperature);
    bool mayStart(std::size_t garment) const;
    std::size_t firstToStart() const;
    void start(std::size_t garment);
    void takePlaten(std::size_t garment, const TimedStep& step);
    void finish(std::size_t garment);
    std::int64_t nextMoment() const;
    void note(std::size_t garment, Resource resource, std::int64_t begins, std::int64_t ends);

    const TimedDay& m_day;
    std::span<const std::size_t> m_order;
    DayRecord* m_record;
    std::vector<Garment> m_garments; // beside m_order: the place in it is the priority
    std::vector<Platen> m_platens;
    std::int64_t m_now = 0;
    std::int64_t m_handsFreeAt = 0;
    std::size_t m_left = 0;
    DayScore m_score;
};

} // namespace holdfast

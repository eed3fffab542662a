#include "core/press/day_search.h"

#include "core/press/day_bound.h"
#include "core/press/day_trials.h"
#include "core/press/order_search.h"

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <utility>

namespace holdfast {

namespace {

// Garments run through in trials for each garment of the day, beside those that the request allows anyway.
constexpr std::uint64_t kMoreForEach = 40;

// Moves looked at for one garment before another is asked, drawn from all there are.
constexpr std::size_t kMovesEach = 60;

// Longest block that is moved.
constexpr std::size_t kLongestBlock = 3;

// Says when enough was searched: what is spent of the request's measure, its time, its own wish to stop.
class Spending {
public:
    Spending(const PlanRequest& request, std::uint64_t mostGarments)
        : m_request(request)
        , m_mostGarments(mostGarments)
        , m_begins(std::chrono::steady_clock::now()) {}

    bool isOver(std::uint64_t garmentsRun) const { return garmentsRun >= m_mostGarments || mustStop(); }

    bool mustStop() const {
        return (m_request.shouldStop && m_request.shouldStop()) ||
               std::chrono::steady_clock::now() - m_begins >= m_request.search.atMost;
    }

private:
    const PlanRequest& m_request;
    std::uint64_t m_mostGarments;
    std::chrono::steady_clock::time_point m_begins;
};

// The day as OrderSearch sees it.
class DayProblem {
public:
    DayProblem(const TimedDay& day, std::span<const std::size_t> order, const Spending& spending,
               std::uint64_t seed)
        : m_trials(day)
        , m_spending(spending)
        , m_random(seed)
        , m_fixed(static_cast<std::size_t>(
              std::ranges::count_if(order, [&](std::size_t job) { return day.jobs()[job].isUnderway; }))) {}

    void settle(std::span<const std::size_t> order) { m_trials.settle(order); }
    const DayScore& cost() const { return m_trials.score(); }
    std::size_t fixedPlaces() const { return m_fixed; }
    bool isOver() const { return m_spending.isOver(m_trials.garmentsRun()); }

    std::optional<OrderMove> betterFrom(std::size_t first) {
        listMoves(first);
        const std::size_t count = std::min(m_moves.size(), kMovesEach);
        for (std::size_t next = 0; next < count && !isOver(); ++next) {
            std::swap(m_moves[next], m_moves[next + m_random.below(m_moves.size() - next)]);
            if (m_trials.after(m_moves[next], cost()) < cost())
                return m_moves[next];
        }
        return std::nullopt;
    }

private:
    // A short block from here to a later place, one from a later place to here, a swap of two.
    void listMoves(std::size_t first) {
        m_moves.clear();
        const std::size_t places = m_trials.order().size();
        for (std::size_t last = first + 2; last <= places; ++last) {
            for (std::size_t block = 1; block <= kLongestBlock && first + block < last; ++block) {
                m_moves.push_back({first, first + block, first + block, last});
                if (last - block > first + block)
                    m_moves.push_back({first, last - block, last - block, last});
            }
            if (last > first + 2)
                m_moves.push_back({first, first + 1, last - 1, last});
        }
    }

    DayTrials m_trials;
    const Spending& m_spending;
    OrderRandom m_random;
    std::size_t m_fixed;
    std::vector<OrderMove> m_moves;
};

bool areAlike(const TimedJob& one, const TimedJob& other) {
    return one.isUnderway == other.isUnderway && one.platens == other.platens && one.steps == other.steps;
}

// Every order, garment after garment, but for those that can only be worse than the best known.
class EveryOrder {
public:
    EveryOrder(const TimedDay& day, std::vector<std::size_t> start, const Spending& spending)
        : m_day(day)
        , m_spending(spending)
        , m_simulation(day)
        , m_jobs(start)
        , m_best(std::move(start))
        , m_leastScore(day.score(m_best))
        , m_isGiven(m_jobs.size(), false)
        , m_states(m_jobs.size())
        , m_bound(day) {
        m_simulation.begin(m_jobs);
    }

    std::vector<std::size_t> best() && {
        goOnFrom(DayState{m_simulation.state()});
        return std::move(m_best);
    }

private:
    void goOnFrom(const DayState& state) {
        if (m_order.size() == m_jobs.size()) {
            if (state.score < m_leastScore) {
                m_leastScore = state.score;
                m_best = m_order;
            }
            return;
        }
        for (std::size_t index = 0; index < m_jobs.size(); ++index) {
            if (m_isGiven[index] || !mayBeNext(index))
                continue;
            if (m_spending.mustStop())
                return;
            m_simulation.begin(state);
            m_simulation.give(m_jobs[index]);
            m_simulation.run(m_leastScore.lateness);
            DayState& next = m_states[m_order.size()];
            next = m_simulation.state();
            m_isGiven[index] = true;
            m_order.push_back(m_jobs[index]);
            if (m_bound.least(next, notGiven()) < m_leastScore)
                goOnFrom(next);
            m_order.pop_back();
            m_isGiven[index] = false;
        }
    }

    std::span<const std::size_t> notGiven() {
        m_notGiven.clear();
        for (std::size_t index = 0; index < m_jobs.size(); ++index) {
            if (!m_isGiven[index])
                m_notGiven.push_back(m_jobs[index]);
        }
        return m_notGiven;
    }

    // Those under way come first; of garments alike in everything, the first.
    bool mayBeNext(std::size_t index) const {
        const TimedJob& job = m_day.jobs()[m_jobs[index]];
        for (std::size_t other = 0; other < m_jobs.size(); ++other) {
            if (m_isGiven[other] || other == index)
                continue;
            const TimedJob& rival = m_day.jobs()[m_jobs[other]];
            if (rival.isUnderway && !job.isUnderway)
                return false;
            if (other < index && rival.due == job.due && rival.weight == job.weight && areAlike(rival, job))
                return false;
        }
        return true;
    }

    const TimedDay& m_day;
    const Spending& m_spending;
    DaySimulation m_simulation;
    std::vector<std::size_t> m_jobs;
    std::vector<std::size_t> m_best;
    DayScore m_leastScore;
    std::vector<std::size_t> m_order;
    std::vector<bool> m_isGiven;
    std::vector<std::size_t> m_notGiven;
    std::vector<DayState> m_states; // by how many were given
    DayBound m_bound;
};

// Garments of one route change places so that the earlier promise goes first, unless the day is worse for it.
std::vector<std::size_t> byPromiseAmongAlike(const TimedDay& day, std::vector<std::size_t> order) {
    std::vector<std::size_t> sorted = order;
    std::vector<bool> isSorted(sorted.size(), false);
    for (std::size_t first = 0; first < sorted.size(); ++first) {
        if (isSorted[first])
            continue;
        std::vector<std::size_t> places, jobs;
        for (std::size_t place = first; place < sorted.size(); ++place) {
            if (isSorted[place] || !areAlike(day.jobs()[sorted[first]], day.jobs()[sorted[place]]))
                continue;
            isSorted[place] = true;
            places.push_back(place);
            jobs.push_back(sorted[place]);
        }
        std::ranges::sort(jobs, {}, [&](std::size_t job) { return std::pair{day.jobs()[job].due, job}; });
        for (std::size_t next = 0; next < places.size(); ++next)
            sorted[places[next]] = jobs[next];
    }
    return day.score(order) < day.score(sorted) ? order : sorted;
}

} // namespace

std::vector<std::size_t> searchedOrder(const TimedDay& day, std::vector<std::size_t> start) {
    const PlanSearch& search = day.request().search;
    const Spending spending{day.request(), search.garments + kMoreForEach * start.size()};
    if (start.size() < 2 || search.garments == 0 || spending.mustStop())
        return start;

    DayProblem problem{day, start, spending, search.seed};
    SearchLimits limits;
    limits.seed = search.seed;
    limits.shouldStop = [&] { return problem.isOver(); };
    std::vector<std::size_t> order = OrderSearch{problem, limits}.from(start).order;
    if (order.size() <= kEveryOrderOf)
        order = EveryOrder{day, std::move(order), spending}.best();
    if (!(day.score(order) < day.score(start)))
        return start;
    return byPromiseAmongAlike(day, std::move(order));
}

} // namespace holdfast

#include "core/press/day_search.h"

#include "core/press/day_trials.h"
#include "core/press/every_order.h"
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

    bool isOver(std::uint64_t garmentsRun) { return garmentsRun >= m_mostGarments || mustStop(); }

    bool mustStop() {
        m_isCutShort = m_isCutShort || (m_request.shouldStop && m_request.shouldStop()) ||
                       std::chrono::steady_clock::now() - m_begins >= m_request.search.atMost;
        return m_isCutShort;
    }

    // It was asked to stop, or its time was up, before all was spent.
    bool isCutShort() const { return m_isCutShort; }

private:
    const PlanRequest& m_request;
    std::uint64_t m_mostGarments;
    std::chrono::steady_clock::time_point m_begins;
    bool m_isCutShort = false;
};

// The day as OrderSearch sees it.
class DayProblem {
public:
    DayProblem(const TimedDay& day, std::span<const std::size_t> order, Spending& spending,
               std::uint64_t seed)
        : m_trials(day)
        , m_spending(spending)
        , m_random(seed)
        , m_fixed(static_cast<std::size_t>(
              std::ranges::count_if(order, [&](std::size_t job) { return day.jobs()[job].isUnderway; }))) {}

    void settle(std::span<const std::size_t> order) { m_trials.settle(order); }
    const DayScore& cost() const { return m_trials.score(); }
    std::size_t fixedPlaces() const { return m_fixed; }
    bool isOver() { return m_spending.isOver(m_trials.garmentsRun()); }

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
    Spending& m_spending;
    OrderRandom m_random;
    std::size_t m_fixed;
    std::vector<OrderMove> m_moves;
};

// Garments of one route change places so that the earlier promise goes first.
std::vector<std::size_t> byPromiseAmongAlike(const TimedDay& day, std::vector<std::size_t> sorted) {
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
    return sorted;
}

} // namespace

SearchedOrder searchedOrder(const TimedDay& day, std::vector<std::size_t> start) {
    const PlanSearch& search = day.request().search;
    Spending spending{day.request(), search.garments + kMoreForEach * start.size()};
    if (start.size() < 2 || search.garments == 0 || spending.mustStop())
        return {std::move(start), spending.isCutShort()};

    DayProblem problem{day, start, spending, search.seed};
    SearchLimits limits;
    limits.seed = search.seed;
    limits.shouldStop = [&] { return problem.isOver(); };
    auto found = OrderSearch{problem, limits}.from(start);
    if (start.size() <= kEveryOrderOf) {
        found.order = EveryOrder{day, std::move(found.order)}.best([&] { return spending.mustStop(); });
        found.cost = day.score(found.order);
    }
    if (!(found.cost < day.score(start)))
        return {std::move(start), spending.isCutShort()};
    std::vector<std::size_t> sorted = byPromiseAmongAlike(day, found.order);
    const bool isAsGood = sorted == found.order || !(found.cost < day.score(sorted));
    return {std::move(isAsGood ? sorted : found.order), spending.isCutShort()};
}

} // namespace holdfast

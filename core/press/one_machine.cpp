#include "core/press/one_machine.h"

#include <algorithm>
#include <cassert>
#include <limits>
#include <numeric>
#include <utility>

namespace holdfast {

namespace {

constexpr double kAnyDelay = std::numeric_limits<double>::infinity();

// Longest of two blocks that are swapped with others between them.
constexpr std::size_t kLongestSwapped = 1;

// About a millisecond.
constexpr std::size_t kLooksBetweenQuestions = 50'000;

double mean(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

} // namespace

double OneMachine::setup(std::optional<std::size_t> before, std::size_t task) const {
    if (firstSetups.empty())
        return 0;
    return before ? setups[*before * tasks.size() + task] : firstSetups[task];
}

double weightedTardiness(const OneMachine& machine, std::span<const std::size_t> order) {
    double now = 0;
    double sum = 0;
    std::optional<std::size_t> before;
    for (const std::size_t task : order) {
        now += machine.setup(before, task) + machine.tasks[task].work;
        sum += machine.tasks[task].weight * std::max(0.0, now - machine.tasks[task].due);
        before = task;
    }
    return sum;
}

std::vector<std::size_t> dispatchedOrder(const OneMachine& machine) {
    if (machine.tasks.empty())
        return {};
    double work = 0;
    for (const DispatchTask& task : machine.tasks)
        work += task.work;
    const double meanWork = std::max(work / static_cast<double>(machine.tasks.size()), 1e-9);
    const double meanSetup = machine.setups.empty() ? 0 : mean(machine.setups);
    const auto setup = [&](std::size_t, std::optional<std::size_t> before, std::size_t task) {
        return machine.setup(before, task);
    };

    std::vector<std::size_t> best;
    double least = 0;
    for (const double k1 : {0.5, 1.0, 2.0, 4.0, 8.0}) {
        for (const double k2 : {0.1, 0.3, 0.6, 1.5}) {
            const IndexScale scale{k1, k2, meanWork, std::max(meanSetup, 1e-9)};
            std::vector<std::size_t> order = orderByApparentTardiness(machine.tasks, 1, setup, scale);
            const double tardiness = weightedTardiness(machine, order);
            if (best.empty() || tardiness < least) {
                best = std::move(order);
                least = tardiness;
            }
            if (meanSetup <= 0)
                break; // the second scale weighs set-ups only
        }
    }
    return best;
}

FoundOrder<double> searchOneMachine(const OneMachine& machine, const SearchLimits& limits) {
    TardinessProblem problem{machine, limits.shouldStop};
    SearchLimits untilNone = limits;
    untilNone.shouldStop = [&] { return problem.cost() <= 0 || (limits.shouldStop && limits.shouldStop()); };
    FoundOrder<double> found = OrderSearch{problem, untilNone}.from(dispatchedOrder(machine));
    found.wasStopped = found.wasStopped && found.cost > 0;
    return found;
}

TardinessProblem::TardinessProblem(const OneMachine& machine, std::function<bool()> shouldStop)
    : m_machine(machine)
    , m_count(machine.tasks.size())
    , m_shouldStop(std::move(shouldStop))
    , m_doneBefore(m_count + 1, 0)
    , m_costBefore(m_count + 1, 0)
    , m_lateWeightBefore(m_count + 1, 0)
    , m_slack(m_count, 0)
    , m_weightBelow((m_count + 1) * (m_count + 1), 0)
    , m_slackBelow((m_count + 1) * (m_count + 1), 0)
    , m_setupBetween((m_count + 1) * (m_count + 1), 0)
    , m_mostDelayFrom(m_count + 1, kAnyDelay)
    , m_byRank(m_count, 0)
    , m_rank(m_count, 0) {}

void TardinessProblem::settle(std::span<const std::size_t> order) {
    assert(order.size() == m_count);
    m_order.assign(order.begin(), order.end());
    if (!m_machine.firstSetups.empty()) {
        for (std::size_t named = 0; named <= m_count; ++named) {
            const double* row = named == 0 ? m_machine.firstSetups.data()
                                           : m_machine.setups.data() + m_order[named - 1] * m_count;
            double* between = m_setupBetween.data() + named * (m_count + 1);
            for (std::size_t place = 0; place < m_count; ++place)
                between[place] = row[m_order[place]];
        }
    }
    for (std::size_t place = 0; place < m_count; ++place) {
        const DispatchTask& task = m_machine.tasks[m_order[place]];
        const double done = m_doneBefore[place] + setupBefore(place) + task.work;
        m_doneBefore[place + 1] = done;
        m_costBefore[place + 1] = m_costBefore[place] + task.weight * std::max(0.0, done - task.due);
        m_lateWeightBefore[place + 1] = m_lateWeightBefore[place] + (done > task.due ? task.weight : 0);
    }
    tabulate();
}

void TardinessProblem::tabulate() {
    const auto slackOf = [&](std::size_t place) {
        return m_machine.tasks[m_order[place]].due - m_doneBefore[place + 1];
    };
    std::iota(m_byRank.begin(), m_byRank.end(), std::size_t{0});
    std::ranges::sort(m_byRank, {}, slackOf);
    for (std::size_t rank = 0; rank < m_count; ++rank) {
        m_slack[rank] = slackOf(m_byRank[rank]);
        m_rank[m_byRank[rank]] = rank;
    }
    for (std::size_t place = m_count; place-- > 0;) {
        double* weights = m_weightBelow.data() + place * (m_count + 1);
        double* slacks = m_slackBelow.data() + place * (m_count + 1);
        const double* laterWeights = weights + m_count + 1;
        const double* laterSlacks = slacks + m_count + 1;
        const std::size_t rank = m_rank[place];
        const double weight = m_machine.tasks[m_order[place]].weight;
        const double weighted = weight * m_slack[rank];
        std::copy(laterWeights, laterWeights + rank + 1, weights);
        std::copy(laterSlacks, laterSlacks + rank + 1, slacks);
        for (std::size_t above = rank + 1; above <= m_count; ++above) {
            weights[above] = laterWeights[above] + weight;
            slacks[above] = laterSlacks[above] + weighted;
        }
    }
}

std::size_t TardinessProblem::slacksBelow(double delay) const {
    const double* base = m_slack.data();
    for (std::size_t left = m_count; left > 1;) {
        const std::size_t half = left / 2;
        base += base[half - 1] < delay ? half : 0;
        left -= half;
    }
    return static_cast<std::size_t>(base - m_slack.data()) + (*base < delay ? 1 : 0);
}

// What the places [begin, end) cost when all of them are done later by `delay`, or sooner if it is negative.
double TardinessProblem::costOf(std::size_t begin, std::size_t end, double delay) const {
    if (delay == 0 || begin == end)
        return m_costBefore[end] - m_costBefore[begin];
    const std::size_t rank = slacksBelow(delay);
    const std::size_t from = begin * (m_count + 1) + rank;
    const std::size_t to = end * (m_count + 1) + rank;
    return (m_weightBelow[from] - m_weightBelow[to]) * delay - (m_slackBelow[from] - m_slackBelow[to]);
}

// The longest delay at which the places [begin, end) still cost no more than `room`.
double TardinessProblem::delayWithin(std::size_t begin, std::size_t end, double room) const {
    const std::size_t from = begin * (m_count + 1);
    const std::size_t to = end * (m_count + 1);
    std::size_t low = 0;
    for (std::size_t high = m_count; low < high;) {
        const std::size_t rank = (low + high) / 2;
        const double weight = m_weightBelow[from + rank] - m_weightBelow[to + rank];
        const double slack = m_slackBelow[from + rank] - m_slackBelow[to + rank];
        if (weight * m_slack[rank] - slack > room)
            high = rank;
        else
            low = rank + 1;
    }
    const double weight = m_weightBelow[from + low] - m_weightBelow[to + low];
    if (weight <= 0)
        return kAnyDelay;
    return (room + m_slackBelow[from + low] - m_slackBelow[to + low]) / weight;
}

// Of the whole order once the move is carried out; where that is not below the limit, something not below it.
double TardinessProblem::costAfter(const OrderMove& move, double limit) const {
    const auto& [first, firstEnd, second, last] = move;
    const double secondDelay =
        m_doneBefore[first] + setupBetween(first, second) - (m_doneBefore[second] + setupBefore(second));
    double done = m_doneBefore[last] + secondDelay;
    std::size_t before = last; // named as in setupBetween
    double betweenDelay = 0;
    if (!move.isOfNeighbours()) {
        betweenDelay =
            done + setupBetween(before, firstEnd) - (m_doneBefore[firstEnd] + setupBefore(firstEnd));
        done = m_doneBefore[second] + betweenDelay;
        before = second;
    }
    const double firstDelay = done + setupBetween(before, first) - (m_doneBefore[first] + setupBefore(first));
    done = m_doneBefore[firstEnd] + firstDelay;
    const double restDelay = done + setupBetween(firstEnd, last) - (m_doneBefore[last] + setupBefore(last));

    // Cost is convex in a block's delay: it lies nowhere below its tangent.
    double cost = m_costBefore.back() + lateWeight(first, firstEnd) * firstDelay +
                  lateWeight(firstEnd, second) * betweenDelay + lateWeight(second, last) * secondDelay +
                  lateWeight(last, m_count) * (last < m_count ? restDelay : 0);
    if (!(cost < limit))
        return cost;

    cost = m_costBefore[first] + (last < m_count ? costOf(last, m_count, restDelay) : 0);
    if (cost < limit)
        cost += costOf(first, firstEnd, firstDelay);
    if (cost < limit)
        cost += costOf(firstEnd, second, betweenDelay);
    if (cost < limit)
        cost += costOf(second, last, secondDelay);
    return cost;
}

struct TardinessProblem::Best {
    std::size_t first = 0;
    double cost = 0; // to be bettered
    std::optional<OrderMove> move;

    void hear(const OrderMove& other, double otherCost) {
        if (otherCost < cost) {
            cost = otherCost;
            move = other;
        }
    }
};

// Asked again only after so many further looks at moves, at most.
bool TardinessProblem::mustStop(std::size_t looks) {
    m_looks += looks;
    if (m_looks < kLooksBetweenQuestions)
        return false;
    m_looks = 0;
    return m_shouldStop && m_shouldStop();
}

std::optional<OrderMove> TardinessProblem::betterFrom(std::size_t first) {
    // Less than rounding errors is no gain.
    Best best{first, cost() - 1e-9 * std::max(1.0, cost()), std::nullopt};
    const double room = best.cost - m_costBefore[first];
    if (room < 0)
        return std::nullopt; // nothing behind it costs anything
    for (std::size_t last = first + 2; last < m_count && !m_machine.firstSetups.empty(); ++last)
        m_mostDelayFrom[last] = delayWithin(last, m_count, room);
    for (std::size_t firstEnd = first + 1; firstEnd < m_count; ++firstEnd) {
        if (mustStop(m_count - firstEnd))
            return std::nullopt;
        const double mostDelay = delayWithin(first, firstEnd, room);
        lookAtNeighbours(best, firstEnd, mostDelay);
        if (firstEnd == first + 1)
            lookAtSwaps(best, mostDelay);
    }
    return best.move;
}

// The first block goes behind each block that follows it, as far as its own delay allows.
void TardinessProblem::lookAtNeighbours(Best& best, std::size_t firstEnd, double mostDelay) const {
    const std::size_t first = best.first;
    const double toSecond = setupBetween(first, firstEnd) - setupBefore(firstEnd);
    const double latest = m_doneBefore[firstEnd] + setupBefore(first) - toSecond + mostDelay;
    for (std::size_t last = firstEnd + 1; last <= m_count && m_doneBefore[last] <= latest; ++last) {
        const double toFirst = setupBetween(last, first);
        if (m_doneBefore[last] + toFirst > latest)
            continue;
        const double restDelay =
            toSecond + toFirst + setupBetween(firstEnd, last) - setupBefore(first) - setupBefore(last);
        if (last < m_count && restDelay > m_mostDelayFrom[last])
            continue;
        const OrderMove move{first, firstEnd, firstEnd, last};
        best.hear(move, costAfter(move, best.cost));
    }
}

// The task at the first place and a later one change places, with others between them.
void TardinessProblem::lookAtSwaps(Best& best, double mostDelay) const {
    const std::size_t first = best.first;
    const std::size_t between = first + 1;
    const double latest = m_doneBefore[between] + setupBefore(between) + setupBefore(first) + mostDelay;
    for (std::size_t second = between + 1; second < m_count && m_doneBefore[second] <= latest; ++second) {
        const std::size_t last = second + 1;
        const double toOthers = setupBetween(first, second) - setupBefore(second) +
                                setupBetween(last, between) - setupBefore(between);
        const double firstDelay = m_doneBefore[last] - m_doneBefore[between] + toOthers +
                                  setupBetween(second, first) - setupBefore(first);
        if (firstDelay > mostDelay)
            continue;
        const double restDelay = firstDelay + m_doneBefore[between] - m_doneBefore[last] +
                                 setupBetween(between, last) - setupBefore(last);
        if (last < m_count && restDelay > m_mostDelayFrom[last])
            continue;
        const OrderMove move{first, between, second, last};
        best.hear(move, costAfter(move, best.cost));
    }
}

} // namespace holdfast

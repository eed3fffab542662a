// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_annealing.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <utility>

namespace holdfast {

namespace {

// This many garments in outline take as long as one that is run through.
constexpr std::uint64_t kOutlinesEach = 32;

// An annealing cools down in this many steps, to a hundredth in all.
constexpr std::uint64_t kSteps = 64;
constexpr double kCooler = 0.93057204092969895; // 100^(-1/64)

// How warm it begins, as a part of what a move that does harm usually costs.
constexpr double kWarmestInOutline = 0.02;
constexpr double kWarmestByTrials = 0.01;
constexpr double kWarmestElsewhere = 0.1;

// A search of more than this many orders begins warmer, up to this many times.
constexpr double kShortAnnealing = 1000;
constexpr double kMostWarmer = 10;

// Moves that are looked at to see what moves cost.
constexpr int kLossTrials = 60;
constexpr double kAnyCost = std::numeric_limits<double>::max();

// How much the last trial counts in what is said of them all: of how wrong the outline is, and of garments.
constexpr double kErrorCountsFor = 0.02;
constexpr double kTrialCountsFor = 0.1;

// This much of what a trial takes is spent on finding what to try.
constexpr double kOutlinesATrial = 0.2;

// How many times as wrong as usual the outline is taken to be, on average. On one press a trial soon comes to
// where the rest of the day is known, and costs little.
constexpr double kDoubtOnOnePress = 10;
constexpr double kDoubtOnMore = 3;

constexpr double kLogOfTwo = 0.69314718055994531;

// From warm to cold over the work that may be spent.
class Cooling {
public:
    Cooling(double warmest, std::uint64_t spent, std::uint64_t work)
        : m_warmth(warmest)
        , m_begin(spent)
        , m_work(work) {}

    bool isDone(std::uint64_t spent) {
        for (; m_step < kSteps && (spent - m_begin) * kSteps >= m_work * (m_step + 1); ++m_step)
            m_warmth *= kCooler;
        return m_step == kSteps;
    }
    double warmth() const { return m_warmth; }

private:
    double m_warmth;
    std::uint64_t m_begin;
    std::uint64_t m_work;
    std::uint64_t m_step = 0;
};

} // namespace

DayAnnealing::DayAnnealing(const TimedDay& day, std::span<const ScoredOrder> starts, std::uint64_t seed,
                           std::function<bool(std::uint64_t)> isOver)
    : m_day(day)
    , m_starts(starts)
    , m_sketch(day)
    , m_trials(day)
    , m_random(seed)
    , m_isOver(std::move(isOver))
    , m_best(starts.front().order)
    , m_bestScore(starts.front().score) {
    m_fixed = static_cast<std::size_t>(
        std::ranges::count_if(m_best, [&](std::size_t job) { return day.jobs()[job].isUnderway; }));
    for (const ScoredOrder& start : starts) {
        if (start.score < m_bestScore) {
            m_best = start.order;
            m_bestScore = start.score;
        }
        if (!m_isOver(spent()))
            runThrough(start.order);
    }
    m_mostLate = m_bestScore.lateGarments;
}

std::uint64_t DayAnnealing::spent() const {
    return m_runThrough + m_trials.garmentsRun() + m_sketch.garmentsRun() / kOutlinesEach;
}

// The sketch learns from every order that is run through.
DayScore DayAnnealing::runThrough(std::span<const std::size_t> order) {
    DayRecord record;
    DaySimulation simulation{m_day, &record};
    simulation.begin(order);
    for (const std::size_t job : order) {
        simulation.give(job);
        simulation.run();
    }
    m_runThrough += order.size();
    m_sketch.learn(record);
    return simulation.state().score;
}

void DayAnnealing::hear(std::span<const std::size_t> order, const DayScore& score) {
    if (!(score < m_bestScore) || score.lateGarments > m_mostLate)
        return;
    m_best.assign(order.begin(), order.end());
    m_bestScore = score;
}

void DayAnnealing::inOutline(std::uint64_t work) {
    m_sketch.settle(m_best);
    std::vector<std::size_t> least = m_best;
    double leastCost = m_sketch.cost();
    Cooling cooling{usualLoss() * kWarmestInOutline, spent(), work};
    while (!cooling.isDone(spent()) && !m_isOver(spent())) {
        const OrderMove move = drawn(m_sketch.order());
        const double limit = m_sketch.cost() + cooling.warmth() * exponential();
        if (m_sketch.after(move, limit) > limit)
            continue;
        m_sketch.carryOut(move);
        if (m_sketch.cost() < leastCost) {
            leastCost = m_sketch.cost();
            least.assign(m_sketch.order().begin(), m_sketch.order().end());
        }
    }
    const DayScore score = runThrough(least);
    if (score.lateness < m_bestScore.lateness)
        m_outlined = least;
    hear(least, score);
}

void DayAnnealing::byTrials(std::uint64_t work) {
    const std::vector<std::size_t> outlined = std::exchange(m_outlined, {});
    byTrialsFrom(outlined.empty() ? m_best : outlined, work, warmest(work));
}

void DayAnnealing::byTrialsFromElsewhere(std::uint64_t work) {
    byTrialsFrom(m_starts[m_random.below(m_starts.size())].order, work, kWarmestElsewhere);
}

void DayAnnealing::byTrialsFrom(std::span<const std::size_t> start, std::uint64_t work, double warmest) {
    settle(start);
    if (m_isOver(spent()))
        return;
    const double loss = usualLoss();
    m_lateCosts = loss;
    m_usualTrial = static_cast<double>(m_best.size());
    Cooling cooling{loss * warmest, spent(), work};
    while (!cooling.isDone(spent()) && !m_isOver(spent())) {
        const std::optional<Promising> next = mostPromising(cooling.warmth());
        if (!next)
            continue;
        const double cost = costOf(m_trials.score());
        const std::uint64_t begun = m_trials.garmentsRun();
        const DayScore tried = m_trials.after(next->move, cost + next->room);
        const double error =
            std::min(std::abs(costOf(tried) - cost - next->outline), next->room + std::abs(next->outline));
        m_usualError += kErrorCountsFor * (error - m_usualError);
        m_usualTrial +=
            kTrialCountsFor * (static_cast<double>(m_trials.garmentsRun() - begun) - m_usualTrial);
        if (costOf(tried) > cost + next->room)
            continue;
        m_tried.assign(m_trials.order().begin(), m_trials.order().end());
        carryOut(next->move, m_tried);
        settle(m_tried);
        hear(m_tried, m_trials.score());
    }
}

// The longer it takes, the warmer it may begin and still cool down.
double DayAnnealing::warmest(std::uint64_t work) const {
    const double orders = static_cast<double>(work) / static_cast<double>(m_best.size());
    return kWarmestByTrials * std::clamp(std::sqrt(orders / kShortAnnealing), 1.0, kMostWarmer);
}

// Of as many moves as may be looked at in outline for a part of what a trial takes, the one that gains most,
// or does least harm. None: all cost too much, even allowing for how wrong the outline usually is, and now
// and then for much more.
std::optional<DayAnnealing::Promising> DayAnnealing::mostPromising(double warmth) {
    const double settled = m_sketch.cost();
    const bool isQuicklyTried = m_day.request().platens.size() == 1;
    double limit = m_usualError * (isQuicklyTried ? kDoubtOnOnePress : kDoubtOnMore) * exponential();
    std::optional<Promising> best;
    const std::uint64_t until =
        m_sketch.garmentsRun() + static_cast<std::uint64_t>(kOutlinesATrial * m_usualTrial * kOutlinesEach);
    do {
        const OrderMove move = drawn(m_trials.order());
        const double room = warmth * exponential();
        const double outline = m_sketch.after(move, settled + limit + room) - settled;
        if (outline - room >= limit)
            continue;
        limit = outline - room;
        best = Promising{move, outline, room};
    } while (m_sketch.garmentsRun() < until);
    return best;
}

void DayAnnealing::settle(std::span<const std::size_t> order) {
    m_trials.settle(order);
    m_sketch.settle(order, m_trials.ends());
}

double DayAnnealing::costOf(const DayScore& score) const {
    return searchCost(score.lateness, static_cast<double>(score.endWithChanges())) +
           m_lateCosts * std::max(0, score.lateGarments - m_mostLate);
}

// What a move costs that does harm: the middle one of those drawn.
double DayAnnealing::usualLoss() {
    m_losses.clear();
    for (int trial = 0; trial < kLossTrials; ++trial) {
        const double loss = m_sketch.after(drawn(m_sketch.order()), kAnyCost) - m_sketch.cost();
        if (loss > 0)
            m_losses.push_back(loss);
    }
    if (m_losses.empty())
        return 1;
    const auto middle = m_losses.begin() + static_cast<std::ptrdiff_t>(m_losses.size() / 2);
    std::ranges::nth_element(m_losses, middle);
    return *middle;
}

OrderMove DayAnnealing::drawn(std::span<const std::size_t> order) {
    const std::size_t kind = m_random.below(10);
    if (kind < 5)
        return m_random.move(m_fixed, order.size());
    return kind < 9 ? drawnSwap(order) : drawnRun(order);
}

OrderMove DayAnnealing::drawnSwap(std::span<const std::size_t> order) {
    const std::size_t movable = order.size() - m_fixed;
    const std::size_t one = m_random.below(movable);
    std::size_t other = m_random.below(movable - 1);
    if (other >= one)
        ++other;
    const std::size_t first = m_fixed + std::min(one, other);
    const std::size_t second = m_fixed + std::max(one, other);
    return {first, first + 1, second, second + 1};
}

// Neighbours that are pressed at one temperature, or promised for one time; half the time a part of them.
OrderMove DayAnnealing::drawnRun(std::span<const std::size_t> order) {
    const bool byHeat = m_random.below(2) == 0;
    const auto isLike = [&](std::size_t one, std::size_t other) {
        const TimedJob& job = m_day.jobs()[order[one]];
        const TimedJob& next = m_day.jobs()[order[other]];
        return byHeat ? job.firstHeat == next.firstHeat : job.due == next.due;
    };
    std::size_t begin = m_fixed + m_random.below(order.size() - m_fixed);
    std::size_t end = begin + 1;
    while (begin > m_fixed && isLike(begin - 1, begin))
        --begin;
    while (end < order.size() && isLike(end - 1, end))
        ++end;
    if (m_random.below(2) == 0) {
        const std::size_t one = m_random.below(end - begin);
        const std::size_t other = m_random.below(end - begin);
        end = begin + std::max(one, other) + 1;
        begin += std::min(one, other);
    }
    const std::size_t length = end - begin;
    if (m_fixed + length >= order.size())
        return drawnSwap(order);
    std::size_t to = m_fixed + m_random.below(order.size() - m_fixed - length);
    if (to >= begin)
        return {begin, end, end, to + length + 1};
    return {to, begin, begin, end};
}

// Drawn from the exponential distribution with a mean of one: the logarithm of a number drawn evenly, by
// halves and a series (Abramowitz, Stegun 4.1.27).
double DayAnnealing::exponential() {
    constexpr std::size_t kEven = std::size_t{1} << 31;
    const auto even = static_cast<std::uint32_t>(m_random.below(kEven)) * 2 + 1; // odd: never 0
    const int halves = std::countl_zero(even);
    const double share = static_cast<double>(even << halves) * 0x1p-32; // from a half to one
    const double z = (share - 1) / (share + 1);
    const double square = z * z;
    const double logarithm =
        2 * z * (1 + square * (1.0 / 3 + square * (1.0 / 5 + square * (1.0 / 7 + square / 9))));
    return halves * kLogOfTwo - logarithm;
}

} // namespace holdfast

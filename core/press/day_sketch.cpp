#include "core/press/day_sketch.h"

#include <algorithm>
#include <cassert>
#include <limits>

namespace holdfast {

namespace {

// How much a new day counts beside those seen before, at least.
constexpr double kNewCountsFor = 0.1;

// What was seen of one garment is part chance: so much of it is believed.
constexpr double kBelieved = 0.5;

// No stretch is shorter than this part of what garments like it take.
constexpr double kLeastPart = 0.3;

void moveMean(double& mean, double value, int seen) {
    mean += (value - mean) * std::max(kNewCountsFor, 1.0 / seen);
}

} // namespace

DaySketch::DaySketch(const TimedDay& day)
    : m_day(day)
    , m_heats(day.heats() + 1)
    , m_platens(day.request().platens.size()) {
    const std::size_t any = day.heats();
    m_changes.assign(m_platens.size() * m_heats * m_heats, 0);
    for (std::size_t platen = 0; platen < m_platens.size(); ++platen) {
        for (std::size_t from = 0; from < any; ++from) {
            for (std::size_t to = 0; to < any; ++to)
                m_changes[(platen * m_heats + from) * m_heats + to] = day.changeOn(platen, from, to);
        }
    }
    for (const TimedJob& job : day.jobs()) {
        Outline outline;
        outline.due = static_cast<double>(job.due);
        outline.weight = job.weight;
        outline.work = job.work;
        outline.firstHeat = std::min(job.firstHeat, any);
        outline.lastHeat = std::min(job.lastHeat, any);
        outline.features = {1, static_cast<double>(job.platenWorkFrom.front()),
                            static_cast<double>(job.handWorkFrom.front()),
                            static_cast<double>(job.lengthFrom.front() - job.work)};
        outline.within = job.platens.empty() ? 0 : changesWithin(job, job.platens.front());
        m_outlines.push_back(outline);
    }
}

double DaySketch::changesWithin(const TimedJob& job, std::size_t platen) const {
    double changes = 0;
    std::size_t heat = kAnyHeat;
    for (const TimedStep& step : job.steps) {
        if (step.heat == kAnyHeat)
            continue;
        if (heat != kAnyHeat)
            changes += static_cast<double>(m_day.changeOn(platen, heat, step.heat));
        heat = step.heat;
    }
    return changes;
}

// A garment's stretch: from when the one before it on its platen has left for the last time until it has.
void DaySketch::learn(const DayRecord& record) {
    std::vector<double> leaves(m_outlines.size(), 0);
    for (const Sitting& sitting : record.sittings)
        leaves[sitting.job] = std::max(leaves[sitting.job], static_cast<double>(sitting.ends));
    begin(0);
    std::vector<double> stretches(m_outlines.size(), 0);
    for (std::size_t place = 0; place < record.jobs.size(); ++place) {
        const std::size_t job = record.jobs[place];
        Outline& outline = m_outlines[job];
        const DayRecord::Garment& garment = record.garments[place];
        Platen& platen = m_platens[garment.platen];
        const auto change =
            static_cast<double>(changeOn(garment.platen, platen.heat, outline.firstHeat)) + outline.within;
        const double left = std::max(platen.freeAt, leaves[job]);
        stretches[job] = left - platen.freeAt - change;
        platen.freeAt = left;
        if (outline.lastHeat + 1 < m_heats)
            platen.heat = outline.lastHeat;
        for (std::size_t row = 0; row < kFeatures; ++row) {
            m_sums[row] += outline.features[row] * stretches[job];
            for (std::size_t column = 0; column < kFeatures; ++column)
                m_products[row][column] += outline.features[row] * outline.features[column];
        }
        moveMean(outline.meanAfter, static_cast<double>(garment.ends) - left, ++outline.seen);
    }
    const Features weights = fitted();
    for (const std::size_t job : record.jobs) {
        Outline& outline = m_outlines[job];
        double usual = 0;
        for (std::size_t row = 0; row < kFeatures; ++row)
            usual += weights[row] * outline.features[row];
        moveMean(outline.unexplained, stretches[job] - usual, outline.seen);
        outline.stretch =
            std::max({0.0, kLeastPart * usual, usual + kBelieved * outline.unexplained}) + outline.within;
        outline.after = outline.meanAfter;
    }
}

// The normal equations, with a little on the diagonal so that features that say the same do no harm.
DaySketch::Features DaySketch::fitted() const {
    std::array<Features, kFeatures> left = m_products;
    Features right = m_sums;
    for (std::size_t row = 0; row < kFeatures; ++row)
        left[row][row] += 1e-3 * (left[row][row] + 1);
    for (std::size_t pivot = 0; pivot < kFeatures; ++pivot) {
        for (std::size_t row = pivot + 1; row < kFeatures; ++row) {
            const double factor = left[row][pivot] / left[pivot][pivot];
            for (std::size_t column = pivot; column < kFeatures; ++column)
                left[row][column] -= factor * left[pivot][column];
            right[row] -= factor * right[pivot];
        }
    }
    for (std::size_t row = kFeatures; row-- > 0;) {
        for (std::size_t column = row + 1; column < kFeatures; ++column)
            right[row] -= left[row][column] * right[column];
        right[row] /= left[row][row];
    }
    return right;
}

void DaySketch::settle(std::span<const std::size_t> order) {
    m_order.assign(order.begin(), order.end());
    m_sumsBefore.resize(m_order.size() + 1);
    m_platensBefore.resize((m_order.size() + 1) * m_platens.size());
    settleFrom(0);
}

void DaySketch::settle(std::span<const std::size_t> order, std::span<const std::int64_t> ends) {
    assert(order.size() == ends.size());
    begin(0);
    for (std::size_t place = 0; place < order.size(); ++place) {
        const std::size_t platen = give(order[place]);
        m_outlines[order[place]].after = static_cast<double>(ends[place]) - m_platens[platen].freeAt;
    }
    settle(order);
}

void DaySketch::carryOut(const OrderMove& move) {
    holdfast::carryOut(move, m_order);
    settleFrom(move.first);
}

void DaySketch::settleFrom(std::size_t first) {
    begin(first);
    const auto keep = [&](std::size_t place) {
        m_sumsBefore[place] = m_sumsNow;
        std::ranges::copy(m_platens,
                          m_platensBefore.begin() + static_cast<std::ptrdiff_t>(place * m_platens.size()));
    };
    keep(first);
    for (std::size_t place = first; place < m_order.size(); ++place) {
        give(m_order[place]);
        keep(place + 1);
    }
    m_garmentsRun += m_order.size() - first;
}

double DaySketch::after(const OrderMove& move, double limit) {
    begin(move.first);
    if (!giveAll(move.second, move.last, limit) || !giveAll(move.firstEnd, move.second, limit) ||
        !giveAll(move.first, move.firstEnd, limit) || !giveAll(move.last, m_order.size(), limit))
        return std::numeric_limits<double>::infinity();
    return searchCost(m_sumsNow.lateness, m_sumsNow.ends);
}

bool DaySketch::giveAll(std::size_t begin, std::size_t end, double limit) {
    for (std::size_t place = begin; place < end; ++place) {
        give(m_order[place]);
        ++m_garmentsRun;
        if (m_sumsNow.lateness > limit)
            return false;
    }
    return true;
}

void DaySketch::begin(std::size_t place) {
    if (place > 0) {
        m_sumsNow = m_sumsBefore[place];
        const auto platens = m_platensBefore.begin() + static_cast<std::ptrdiff_t>(place * m_platens.size());
        std::copy_n(platens, m_platens.size(), m_platens.begin());
        return;
    }
    m_sumsNow = {};
    for (std::size_t platen = 0; platen < m_platens.size(); ++platen)
        m_platens[platen] = {0, 0, m_day.heatNow(platen)};
}

// As DaySimulation shares the garments out.
std::size_t DaySketch::give(std::size_t job) {
    const Outline& outline = m_outlines[job];
    const std::vector<std::size_t>& served = m_day.jobs()[job].platens;
    std::size_t best = served.front();
    std::int64_t change = changeOn(best, m_platens[best].heat, outline.firstHeat);
    for (std::size_t next = 1; next < served.size(); ++next) {
        const std::size_t platen = served[next];
        const std::int64_t other = changeOn(platen, m_platens[platen].heat, outline.firstHeat);
        if (m_platens[platen].sharedUntil + other < m_platens[best].sharedUntil + change) {
            best = platen;
            change = other;
        }
    }
    Platen& platen = m_platens[best];
    platen.sharedUntil += change + outline.work;
    platen.freeAt += static_cast<double>(change) + outline.stretch;
    if (outline.lastHeat + 1 < m_heats)
        platen.heat = outline.lastHeat;
    const double ends = platen.freeAt + outline.after;
    m_sumsNow.lateness += outline.weight * std::max(0.0, ends - outline.due);
    m_sumsNow.ends = std::max(m_sumsNow.ends, ends);
    return best;
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_sketch.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <limits>

namespace holdfast {

namespace {

// How much a new day counts besides those seen before, at least.
constexpr double kNewCountsFor = 0.1;

// What was seen of one garment is part chance: this much of it is believed.
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
                m_changes[(platen * m_heats + from) * m_heats + to] =
                    static_cast<double>(day.changeOn(platen, from, to));
        }
    }
    for (const TimedJob& job : day.jobs()) {
        Outline outline;
        outline.due = static_cast<double>(job.due);
        outline.weight = job.weight;
        outline.work = static_cast<double>(job.work);
        outline.firstHeat = static_cast<std::uint32_t>(std::min(job.firstHeat, any));
        outline.lastHeat = static_cast<std::uint32_t>(std::min(job.lastHeat, any));
        if (job.platens.size() == 1)
            outline.onlyPlaten = static_cast<std::uint32_t>(job.platens.front());
        m_outlines.push_back(outline);
        Lesson lesson;
        lesson.features = {1, static_cast<double>(job.platenWorkFrom.front()),
                           static_cast<double>(job.handWorkFrom.front()),
                           static_cast<double>(job.lengthFrom.front() - job.work)};
        lesson.within = job.platens.empty() ? 0 : changesWithin(job, job.platens.front());
        m_lessons.push_back(lesson);
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
        const Outline& outline = m_outlines[job];
        Lesson& lesson = m_lessons[job];
        const DayRecord::Garment& garment = record.garments[place];
        Platen& platen = m_platens[garment.platen];
        const double change = changeOn(garment.platen, platen.heat, outline.firstHeat) + lesson.within;
        const double left = std::max(platen.freeAt, leaves[job]);
        stretches[job] = left - platen.freeAt - change;
        platen.freeAt = left;
        if (outline.lastHeat + 1 < m_heats)
            platen.heat = outline.lastHeat;
        for (std::size_t row = 0; row < kFeatures; ++row) {
            m_sums[row] += lesson.features[row] * stretches[job];
            for (std::size_t column = 0; column < kFeatures; ++column)
                m_products[row][column] += lesson.features[row] * lesson.features[column];
        }
        moveMean(lesson.meanAfter, static_cast<double>(garment.ends) - left, ++lesson.seen);
    }
    const Features weights = fitted();
    for (const std::size_t job : record.jobs) {
        Outline& outline = m_outlines[job];
        Lesson& lesson = m_lessons[job];
        double usual = 0;
        for (std::size_t row = 0; row < kFeatures; ++row)
            usual += weights[row] * lesson.features[row];
        moveMean(lesson.unexplained, stretches[job] - usual, lesson.seen);
        outline.stretch =
            std::max({0.0, kLeastPart * usual, usual + kBelieved * lesson.unexplained}) + lesson.within;
        outline.after = lesson.meanAfter;
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
    HOLDFAST_ASSERT(order.size() == ends.size());
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
    m_late.resize(m_order.size());
    m_platenOf.resize(m_order.size());
    for (std::size_t place = first; place < m_order.size(); ++place) {
        const Outline& outline = m_outlines[m_order[place]];
        const std::size_t platen = give(m_order[place]);
        m_late[place] = {m_platens[platen].freeAt + outline.after - outline.due, outline.weight};
        m_platenOf[place] = static_cast<std::uint32_t>(platen);
        keep(place + 1);
    }
    m_garmentsRun += m_order.size() - first;
}

double DaySketch::after(const OrderMove& move, double limit) {
    begin(move.first);
    if (!giveAll(move.second, move.last, limit, false) ||
        !giveAll(move.firstEnd, move.second, limit, false) ||
        !giveAll(move.first, move.firstEnd, limit, false) || !giveAll(move.last, m_order.size(), limit, true))
        return std::numeric_limits<double>::infinity();
    return searchCost(m_sumsNow.lateness, m_sumsNow.ends);
}

bool DaySketch::giveAll(std::size_t begin, std::size_t end, double limit, bool isRest) {
    if (m_platens.size() == 1)
        return giveThem<1>(begin, end, limit, isRest);
    if (m_platens.size() == 2)
        return giveThem<2>(begin, end, limit, isRest);
    return giveThem<0>(begin, end, limit, false);
}

// The rest of the order is not gone through where each platen only gets earlier or later what it got.
template <std::size_t kPlatens>
bool DaySketch::giveThem(std::size_t begin, std::size_t end, double limit, bool isRest) {
    std::array<Platen, kPlatens> few;
    std::copy_n(m_platens.begin(), kPlatens, few.begin());
    Platen* platens = kPlatens > 0 ? few.data() : m_platens.data();
    Sums sums = m_sumsNow;
    bool isWithin = true;
    std::size_t place = begin;
    for (; place < end; ++place) {
        if (isRest && shareAsBefore<kPlatens>(platens, place)) {
            if constexpr (kPlatens > 0)
                addShifted<kPlatens>(platens, place, sums);
            isWithin = sums.lateness <= limit;
            break;
        }
        give<kPlatens>(m_outlines[m_order[place]], platens, sums);
        isWithin = sums.lateness <= limit;
        if (!isWithin)
            break;
    }
    m_garmentsRun += place - begin + 1;
    std::copy_n(few.begin(), kPlatens, m_platens.begin());
    m_sumsNow = sums;
    return isWithin;
}

// From this place on each platen gets what it got, at the same temperatures, only earlier or later.
template <std::size_t kPlatens>
bool DaySketch::shareAsBefore(const Platen* platens, std::size_t place) const {
    const Platen* before = m_platensBefore.data() + place * kPlatens;
    if constexpr (kPlatens == 1)
        return platens[0].heat == before[0].heat;
    else if constexpr (kPlatens == 2)
        return platens[0].heat == before[0].heat && platens[1].heat == before[1].heat &&
               platens[1].sharedUntil - platens[0].sharedUntil ==
                   before[1].sharedUntil - before[0].sharedUntil;
    else
        return false;
}

template <std::size_t kPlatens>
void DaySketch::addShifted(const Platen* platens, std::size_t from, Sums& sums) const {
    const Platen* before = m_platensBefore.data() + from * kPlatens;
    std::array<double, kPlatens> shifts{};
    for (std::size_t platen = 0; platen < kPlatens; ++platen)
        shifts[platen] = platens[platen].freeAt - before[platen].freeAt;
    double lateness = 0;
    for (std::size_t place = from; place < m_order.size(); ++place) {
        const double by = m_late[place].by + shifts[kPlatens == 1 ? 0 : m_platenOf[place]];
        lateness += by > 0 ? by * m_late[place].weight : 0;
    }
    sums.lateness += lateness;
    sums.ends =
        std::max(sums.ends, m_sumsBefore.back().ends + *std::max_element(shifts.begin(), shifts.end()));
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
        m_platens[platen] = {0, 0, static_cast<std::uint32_t>(m_day.heatNow(platen))};
}

std::size_t DaySketch::give(std::size_t job) {
    return give<0>(m_outlines[job], m_platens.data(), m_sumsNow);
}

// As DaySimulation shares the garments out.
template <std::size_t kPlatens>
std::size_t DaySketch::give(const Outline& outline, Platen* platens, Sums& sums) const {
    std::size_t best = 0;
    double change = 0;
    if constexpr (kPlatens == 1) {
        change = changeOn(0, platens[0].heat, outline.firstHeat);
    } else if constexpr (kPlatens == 2) {
        const double first = changeOn(0, platens[0].heat, outline.firstHeat);
        const double second = changeOn(1, platens[1].heat, outline.firstHeat);
        const bool isSooner = platens[1].sharedUntil + second < platens[0].sharedUntil + first;
        const bool goesToSecond = outline.onlyPlaten == kAnyPlaten ? isSooner : outline.onlyPlaten == 1;
        best = goesToSecond ? 1 : 0;
        change = goesToSecond ? second : first;
    } else {
        const std::vector<std::size_t>& served =
            m_day.jobs()[static_cast<std::size_t>(&outline - m_outlines.data())].platens;
        best = served.front();
        change = changeOn(best, platens[best].heat, outline.firstHeat);
        for (const std::size_t platen : served) {
            const double other = changeOn(platen, platens[platen].heat, outline.firstHeat);
            if (platens[platen].sharedUntil + other < platens[best].sharedUntil + change) {
                best = platen;
                change = other;
            }
        }
    }
    Platen& platen = platens[best];
    platen.sharedUntil += change + outline.work;
    platen.freeAt += change + outline.stretch;
    platen.heat = outline.lastHeat + 1 < m_heats ? outline.lastHeat : platen.heat;
    const double ends = platen.freeAt + outline.after;
    const double late = ends - outline.due;
    sums.lateness += outline.weight * (late > 0 ? late : 0);
    sums.ends = ends > sums.ends ? ends : sums.ends;
    return best;
}

} // namespace holdfast

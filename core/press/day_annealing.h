// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A better order of a day, looked for by simulated annealing (Kirkpatrick, Gelatt, Vecchi 1983): moves drawn
// at random are made when they better the order, and now and then when they do not, the more rarely the
// later. First in outline (day_sketch.h), where thirty orders cost what one that is run through does; then by
// true trials (day_trials.h) of the moves that the outline does not rule out.
//
// Moves: a block of one to three garments to another place, two garments that change places, and a run of
// garments at one temperature, or with one promise, or a part of it, to another place.
//
// What is spent is counted in garments that were run through, not in time. Numbers are drawn and weighed by
// additions, products, quotients and square roots only, so that every machine comes to the same (IEEE 754 has
// these exact to the last digit).

#include "core/press/day_sketch.h"
#include "core/press/day_trials.h"
#include "core/press/order_search.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

class DayAnnealing {
public:
    // `isOver` is asked before every trial, and while it learns from the starts, with what was spent so far.
    // The starts must stay alive. REQUIRES: starts cleaned by the day, at least one, of at least two garments
    // that are not under way.
    DayAnnealing(const TimedDay& day, std::span<const ScoredOrder> starts, std::uint64_t seed,
                 std::function<bool(std::uint64_t)> isOver);

    // Spends about that much more, from the best order on; by trials, from what the outline found, if it is
    // less late.
    void inOutline(std::uint64_t work);
    void byTrials(std::uint64_t work);
    // The same, but from one of the starts on.
    void byTrialsFromElsewhere(std::uint64_t work);

    // Never worse than the best start, and never more garments late.
    const std::vector<std::size_t>& best() const { return m_best; }
    const DayScore& bestScore() const { return m_bestScore; }
    std::uint64_t spent() const;

private:
    // A move to be tried.
    struct Promising {
        OrderMove move;
        double outline = 0; // what it costs more, in outline
        double room = 0;    // what it may cost more
    };

    void hear(std::span<const std::size_t> order, const DayScore& score);
    void byTrialsFrom(std::span<const std::size_t> start, std::uint64_t work, double warmest);
    std::optional<Promising> mostPromising(double warmth);
    double warmest(std::uint64_t work) const;
    DayScore runThrough(std::span<const std::size_t> order);
    void settle(std::span<const std::size_t> order);
    double costOf(const DayScore& score) const;
    double usualLoss();
    OrderMove drawn(std::span<const std::size_t> order);
    OrderMove drawnSwap(std::span<const std::size_t> order);
    OrderMove drawnRun(std::span<const std::size_t> order);
    double exponential();

    const TimedDay& m_day;
    std::span<const ScoredOrder> m_starts;
    DaySketch m_sketch;
    DayTrials m_trials;
    OrderRandom m_random;
    std::function<bool(std::uint64_t)> m_isOver;
    std::size_t m_fixed = 0; // places that stay as they are: of garments under way
    std::vector<std::size_t> m_best;
    // Found in outline, where the next trials begin. More garments may be late in it than in the best: orders
    // near it are often better all the same.
    std::vector<std::size_t> m_outlined;
    DayScore m_bestScore;
    int m_mostLate = 0;      // garments, in the best start
    double m_lateCosts = 0;  // each garment that is late beyond those
    double m_usualError = 0; // of the outline, in what a move costs
    double m_usualTrial = 0; // garments run through in one
    std::uint64_t m_runThrough = 0;
    std::vector<std::size_t> m_tried;
    std::vector<double> m_losses;
};

} // namespace holdfast

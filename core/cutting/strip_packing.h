// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Shortest strip for a set of rectangles (strip packing, with or without quarter turns).
//
// packAtOnce tries constructive heuristics in several orders. packWithin begins with the same and goes on by
// local search until its time is over, its rounds are done, the lower bound is reached or it is asked to
// stop; its answer is never worse than packAtOnce's, unless it is stopped before that is made. A round is one
// filling of the strip. By work and by rounds it is deterministic for a seed: the same task gives the same
// packing on any machine, however busy. By time it goes through the same rounds, as many as there is time
// for. Better is: more of the earlier pieces placed (where the strip's length is bounded), then shorter. How
// it searches is described in docs/reckoning.md.

#include "core/cutting/strip.h"

#include <chrono>
#include <functional>

namespace holdfast {

struct StripSearch {
    std::chrono::milliseconds budget{100}; // of the thread's processor time
    std::optional<std::uint64_t> work;     // pieces to lay, again and again; given: the budget does not count
    std::optional<std::uint64_t> rounds;   // given: neither the budget nor the work counts
    std::uint64_t seed = 1;
    std::function<bool()> shouldStop;                  // asked at least every 10 ms; may be empty
    std::function<void(const StripPacking&)> improved; // each better one as it is found; may be empty
    std::function<void(std::uint64_t)> worked;         // this many pieces were laid since; may be empty
};

// Both: an error where checkTask finds one. Stopped, what is not laid yet follows in plain rows; `shouldStop`
// may be empty.
Result<StripPacking> packAtOnce(const StripTask& task, const std::function<bool()>& shouldStop = {});
Result<StripPacking> packWithin(const StripTask& task, const StripSearch& search);

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How long the steps done by hand took, against what is planned for them, and where they differ beyond chance
// the number to plan with. Judged by the signed ranks of log(done / planned), all kinds together (Holm).

#include "core/facts/hand_times.h"
#include "core/press/route.h"
#include "core/quality/signed_rank.h"
#include "core/trade/dates.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// Longer than this a pause lay in it; or than so many times the plan, where that is longer. The bound is far
// from the times of hands, so that what it leaves out does not make them look shorter.
inline constexpr Seconds kLongestByHand{600};
inline constexpr int kMostTimesPlanned = 4;
inline constexpr std::size_t kLatestToJudge = 200;

// A step that was finished. Steps that are no work of the hands alone have none of HandTimes.
struct StepDone {
    StepKind kind = StepKind::LintRoll;
    LocalTime from{};
    LocalTime until{};
    int decals = 1; // peeled in one
};

struct LearnedTime {
    HandTime hand{};
    Seconds planned{0};
    std::size_t times = 0;           // that count, the latest kLatestToJudge at most
    std::size_t atOnce = 0;          // left out: no time between beginning and end
    std::size_t paused = 0;          // left out: a pause lay in it
    std::size_t overMidnight = 0;    // left out: another day began
    std::optional<Centre> done = {}; // seconds, with the range where it likely lies; none of no times
    bool isJudged = false;           // there are kFewestToJudge or more
    double chance = 1;
    std::optional<Seconds> proposed = {}; // beyond chance, and a tenth and a second or more from planned
};

// One for each of kAllHandTimes, in their order. `done` has the latest first.
std::vector<LearnedTime> learnedTimes(std::span<const StepDone> done, const HandTimes& planned);

} // namespace holdfast

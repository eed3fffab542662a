// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What usual use of a film will take of a roll, and how sure that is. An estimate from the length cut in
// recent weeks.
//
// Weeks are taken as independent: over d days use has the mean m·d/7 and the spread s·√(d/7), m and s² being
// mean and sample variance of the weekly lengths (a single week spreads by its own length). With use taken as
// normal, a roll with the length free is used by E[min(max(use, 0), free)] = σ·(L(−μ/σ) − L((free − μ)/σ)), L
// the loss function of the unit normal; what it leaves is wasted. Low and high
// hold in eight of ten cases: use at μ ± 1.2816 σ. *Limits:* few weeks, busy fairs and a change of season are
// no normal weeks.

#include "core/trade/dates.h"
#include "core/trade/units.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// Weeks of use that are looked back on.
inline constexpr int kUseWeeks = 13;

struct UseRate {
    double weeklyMean = 0; // mm
    double weeklySpread = 0;
};
UseRate rateOf(std::span<const Millimetres> weeks);

struct ExpectedUse {
    Millimetres expected;
    Millimetres low; // low ≤ expected ≤ high
    Millimetres high;
};

// Expected use of the length `free` within `days`, after `spokenFor` of it is taken from other rolls.
ExpectedUse expectedUse(const UseRate& rate, Days days, Millimetres spokenFor, Millimetres free);

// One of a film's rolls. Until that many days are over, cuts come from this roll.
struct RollInTurn {
    Days days{0};
    Millimetres allotted; // to decals that wait, part of the usual use
    Millimetres free;
    bool mayBeUsed = true; // else nothing but what is allotted is taken
    // Of days that are an estimate: in eight of ten cases they lie between these two.
    std::optional<Days> daysAtLeast = std::nullopt;
    std::optional<Days> daysAtMost = std::nullopt;
};

// Of rolls that are cut from one after the other. A later roll gets what comes when those before it are used
// up or out of date, so its use hangs on theirs: use is drawn kDraws times, evenly over its whole range
// (Latin hypercube; McKay, Beckman and Conover 1979 [M]), always the same draws. Days that are an estimate
// are drawn as well: normal, apart below and above, and alike for all rolls, as a warm year is warm for all
// of them. A first roll whose days are a fact is as above.
inline constexpr int kDraws = 1000;
std::vector<ExpectedUse> expectedUseInTurn(const UseRate& rate, std::span<const RollInTurn> rolls);

} // namespace holdfast

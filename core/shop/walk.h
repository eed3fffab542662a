// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The press walk of today: what was pressed, what is on the press, what comes in which heat run, what cools,
// and what is aside with what frees it.

#include "core/facts/film.h"
#include "core/holds/finding.h"
#include "core/press/day_plan.h"
#include "core/press/stage.h"
#include "core/shop/reckoned_shop.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast {

enum class WalkState { Pressed, OnPress, Cooling, Planned };

struct WalkEntry {
    GarmentId garment;
    WalkState state = WalkState::Planned;
    Instant begins; // as it was, or as planned
    Instant ends;
    Seconds late{0}; // beyond its promise, if the plan is kept
    bool isAfterClosing = false;
};

struct WalkRun {
    PressId press;
    Celsius temperature;
    Seconds change{0}; // heating or cooling before it
    std::optional<Celsius> changedFrom;
    Instant begins;
    Instant ends;
    std::vector<WalkEntry> entries;

    std::size_t pressedCount() const;
    bool isDone() const { return pressedCount() == entries.size(); }
};

struct RackEntry {
    GarmentId garment;
    Instant until;  // cool enough from here on
    Sentence after; // "peel warm, one motion"
    Peel peel = Peel::Cool;
};

// A garment that cannot be pressed now.
struct AsideEntry {
    GarmentId garment;
    Stage stage = Stage::ToWash;
    bool isHeld = false; // a hold of the rules; else it waits for washing, drying, cutting …
    Sentence what;       // "Unwashed", "To cut"
    Sentence why;
    std::optional<Finding> finding;
    std::optional<FreeingAct> frees; // the likeliest; none: only time
    std::optional<RollId> cutFrom;   // for one that waits to be cut: the roll allotted to its first decal
};

struct Walk {
    std::vector<WalkRun> runs;        // by time: done, under way, planned
    std::vector<RackEntry> rack;      // soonest first
    std::vector<AsideEntry> aside;    // earliest promise first
    std::optional<GarmentId> onPress; // a hands-on or platen step is open
    std::optional<GarmentId> next;    // what is turned to after it: see next_at_press.h
    // The first of those not begun.
    std::optional<GarmentId> firstPlanned() const;

    std::size_t pressed = 0;
    std::size_t total = 0; // pressed today, under way and planned
    Instant ends;

    bool isEmpty() const { return runs.empty() && rack.empty() && aside.empty(); }
};

Walk walkOf(const ReckonedShop& shop);

} // namespace holdfast

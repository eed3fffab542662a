// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A roll of film: where it was since when, its test strips, and the length its ledger leaves.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/units.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast {

struct StoragePlace {
    PlaceId id;
    std::string name;
    bool isRetired = false; // no more rolls are put there
};

// From this instant the roll was in that place, until its next stay begins.
struct RollStay {
    PlaceId place;
    Instant since;
};

struct TestStrip {
    Instant at;
    bool passed = false;
    Days extends{0};
    std::string note;
};

enum class RollState { OnShelf, PutAway, UsedUp };

struct FilmRoll {
    RollId id;
    int number = 0; // written on the core: R-09
    FilmId film;
    Millimetres width;
    LocalDate receivedOn{};
    std::optional<LocalDate> madeOn;
    std::optional<LocalDate> printedUseBy;
    std::vector<RollStay> stays;       // oldest first
    std::vector<TestStrip> testStrips; // oldest first
    Millimetres left;                  // sum of its ledger
    RollState state = RollState::OnShelf;

    std::string label() const; // "R-09"
    std::optional<PlaceId> placeNow() const;
    const TestStrip* lastStrip() const; // none: never tested
    const TestStrip* lastPassedStrip() const;
    LocalDate agesFrom() const { return madeOn.value_or(receivedOn); }
};

} // namespace holdfast

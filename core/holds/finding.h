// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a rule has to say of a garment: a hold stops the work, a caution does not, a step added changes its
// route. Derived each time from the facts, never stored. Each says what, why (with its numbers) and what
// frees it.

#include "core/facts/rule.h"
#include "core/trade/ids.h"
#include "core/trade/sentence.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast {

enum class Grade { Hold, Caution, StepAdded };

// What a person can do about a finding; the app offers it one key away.
enum class FreeingAct {
    WashBlank,
    MarkDry,
    MarkNotPrewashed,
    ReadLabel,
    ChooseFilm,
    ChooseBlank,
    ReceiveBlanks,
    ReceiveRoll,
    TestStrip,
    MoveRoll,
    RecordReading,
    EnterRecipe,
    ConfirmRecipe,
    CheckPress,
    AddPress,
    ChooseWayRound,
    ReorderLayers,
    ConfirmWording,
    TakePayment,
    NoteLawChecked,
};

struct Finding {
    Rule rule = Rule::BlankUnwashed;
    Grade grade = Grade::Hold;
    Sentence what;                 // "Unwashed"
    Sentence why;                  // "Lot of 12 Oct, M, Moss: no wash load on record."
    std::vector<FreeingAct> frees; // the likeliest first
    std::optional<DecalId> decal;
    std::optional<FilmId> film;
    std::optional<RollId> roll;
    std::optional<BlankLotId> lot;
    std::optional<BlankStyleId> style;
    std::optional<PlaceId> place;
    std::optional<PressId> press;
    bool isWaived = false;

    bool holds() const { return grade == Grade::Hold && !isWaived; }
};

// "Put in the wash", "Press a test strip": words for the button that frees.
Phrase freeingWords(FreeingAct act);

} // namespace holdfast

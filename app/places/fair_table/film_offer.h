// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The films that can be offered for the garment at hand, and the roll each decal of the order would be cut
// from: rolls that may be used before those that may not, what must be used soonest first, as far as they are
// not promised to other orders.

#include "app/places/fair_table/table_draft.h"
#include "core/shop/reckoned_shop.h"

#include <map>
#include <optional>
#include <vector>

namespace holdfast::app {

enum class RollLack {
    None,
    NoRoll,    // no roll of the film on the shelf
    TooNarrow, // the decal fits no roll either way round
    TooShort,  // what is left on the rolls is not enough
};

struct RollPick {
    const FilmRoll* roll = nullptr; // none: see lack
    bool mayBeUsed = true;          // not past its age, not badly kept
    RollLack lack = RollLack::None;
    Millimetres widest; // of the film's rolls
    Millimetres needed; // along the roll, for this decal
    Millimetres left;   // most of what a wide enough roll still has for it
};

// What is on the rolls for new work; takes from them as decals are picked.
class RollShelf {
public:
    explicit RollShelf(const ReckonedShop& shop);

    RollPick find(const Decal& decal, const Film& film) const;
    RollPick take(const Decal& decal, const Film& film); // and takes what it needs off that roll
    Millimetres leftOf(FilmId film) const;
    int rollsOf(FilmId film) const; // that have anything left
    // The roll that new work of this film begins with.
    const FilmRoll* firstOf(FilmId film, bool* mayBeUsed = nullptr) const;

private:
    struct OnShelf {
        const FilmRoll* roll;
        Millimetres left;
        bool mayBeUsed;
    };
    const ReckonedShop& m_shop;
    std::map<FilmId, std::vector<OnShelf>> m_rolls;
};

// By garment of the draft, then decal: the pick that matters most of all its copies (a lack before a roll).
using RollPicks = std::vector<std::vector<RollPick>>;
RollPicks pickRolls(const TableDraft& draft, const ReckonedShop& shop);

struct FilmOffer {
    const Film* film = nullptr;
    std::vector<Finding> unfit; // empty: fits, or no style is chosen yet
    Millimetres left;           // metres free for new work …
    int rolls = 0;              // … on how many rolls
    RollPick pick;              // for the decal at hand, or the first roll
};

// Every film: those that fit and are on the shelf first, then by name. `decal` may be null.
std::vector<FilmOffer> filmOffers(const ReckonedShop& shop, const BlankStyle* style, const DecalDraft* decal);

} // namespace holdfast::app

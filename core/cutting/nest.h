// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Decals of one film nested on rolls: geometry, which knows no shop.
//
// Each decal takes its size and half the gap on each of its sides; its weeding box is half way out into
// that. Decals keep the edge margin from both edges of the roll. The cut-off line is half a gap after
// the last decal; the length to it is what the roll is charged. Places are as the film lies on the bench,
// carrier sheet down: mirrored.

#include "core/cutting/strip_packing.h"
#include "core/facts/film.h"
#include "core/facts/film_roll.h"
#include "core/facts/order.h"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace holdfast {

// A rectangle of film: across from the roll's edge, along from its cut end.
struct FilmArea {
    Millimetres across;
    Millimetres along;
    Millimetres acrossSize;
    Millimetres alongSize;

    bool operator==(const FilmArea&) const = default;
    std::int64_t area() const { return acrossSize.value * alongSize.value; } // mm²
};

struct DecalPin {
    Millimetres across; // of the decal's own corner
    Millimetres along;
    bool isTurned = false;

    bool operator==(const DecalPin&) const = default;
};

struct NestedDecal {
    DecalId decal;
    FilmArea lies;         // the decal itself, as it lies
    FilmArea box;          // its weeding box, which ends at the roll's edges
    bool isTurned = false; // its width lies along the roll; else across it
    bool isPinned = false;
};

// Shares of the film charged, 0 to 1.
struct FilmShares {
    double decals = 0;  // decals and their boxes
    double offcuts = 0; // worth keeping
    double waste = 0;   // the rest
};

struct Nest {
    RollId roll;
    FilmId film;
    Millimetres rollWidth;
    Millimetres rollLeft;
    Millimetres gap;
    Millimetres edge;
    bool mayTurn = true;             // its decals may lie turned
    std::vector<NestedDecal> decals; // by along, then across
    Millimetres length;              // to the cut-off line; zero: nothing on it
    Millimetres leastLength;         // no nest of these decals, pins kept, is shorter
    std::vector<FilmArea> offcuts;   // before the cut-off line, largest first, none over another

    FilmShares shares() const;
    const NestedDecal* find(DecalId decal) const;
    double aboveLeast() const; // 0.03: at most 3 % above the least possible
};

// An offcut is kept where both its sides reach this; common practice, no source.
inline constexpr Millimetres kSmallestOffcut{100};

// How decals of one film are to be laid.
struct NestRules {
    std::map<DecalId, DecalPin> pins; // all on the first roll
    Millimetres gap{8};
    bool mayTurn = true; // decals of a film with a grain are never turned
};

// What of one film is to be nested, and on what.
struct FilmToNest {
    const Film* film = nullptr;
    std::vector<const FilmRoll*> rolls; // cut from in this order
    std::vector<const Decal*> decals;   // by promise
    Millimetres edge;                   // kept free at both edges of a roll
};

struct FilmNests {
    std::vector<Nest> nests;          // one a roll that takes any, in the order of the rolls
    std::map<DecalId, Sentence> lack; // of those on no roll: why, a sentence with numbers
};

// Nests the decals, kMostPieces at most: the rest is reported as lacking. A pin that lies off the roll or
// over an earlier one, or is turned where the film may not be, is dropped. `search` none: the constructive
// answer at once; `shouldStop` (may be empty) ends that one, and what is not laid yet follows in rows. With a
// search its budget is shared by the rolls, `improved` is not called. An error where there is no roll with
// any film.
Result<FilmNests> nestOnRolls(const FilmToNest& task, const NestRules& rules,
                              const StripSearch* search = nullptr,
                              const std::function<bool()>& shouldStop = {});

// Moving by hand. The place nearest to the one asked for where the decal lies on the roll and over no other;
// none: there is none within the roll's length.
std::optional<DecalPin> nearestFreePlace(const Nest& nest, DecalId decal, const DecalPin& wanted);

// The nest with that decal lying there, pinned; length and offcuts reckoned again. REQUIRES: a free place of
// a decal on this nest.
Nest withDecalAt(const Nest& nest, DecalId decal, const DecalPin& place);

} // namespace holdfast

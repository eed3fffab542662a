// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The route of a garment: every step at the press in its order, with its times.
//
// lint roll → pillow, turn or small platen for obstacles → preheat → for each layer: place, press (or tack,
// if another layer will be pressed on it), cool by the peel, peel in one motion → cover sheet, finishing
// press front, turn, back → look for texture. One side of the garment after the other (front, back, sleeve),
// with a turn between; decals of one side and layer whose recipes agree share a pass if they fit under the
// platen together. A decal larger than the platen becomes several presses, lifted and overlapped, never slid.
// Where films of one garment need different temperatures, each keeps its own press pass. Rest follows the
// last step and is no step of the press.

#include "core/facts/film.h"
#include "core/facts/order.h"
#include "core/facts/press.h"
#include "core/facts/shop_facts.h"
#include "core/trade/sentence.h"
#include "core/trade/units.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

enum class StepKind {
    ReadTag,
    LintRoll,
    WayRound,
    Preheat,
    PlaceDecal,
    Press,
    Cool,
    PeelCarrier,
    Turn,
    FinishFront,
    FinishBack,
    LookForTexture,
};

// What a step asks for. Platen and waiting are counted down; attended work by hand is not.
struct RouteStep {
    std::string key; // "press-2": kind and its number along the route; stable while the garment is the same
    StepKind kind = StepKind::LintRoll;
    Sentence title;                     // "Press"
    Sentence detail;                    // "150 °C · 12 s · medium"
    Seconds attended{0};                // the maker's hands
    Seconds platen{0};                  // the platen is closed: counted down
    Seconds waiting{0};                 // cooling: counted down, needs neither platen nor hands
    std::optional<Celsius> temperature; // the platen's, where the step needs it
    std::optional<DecalId> decal;
    std::optional<Peel> peel; // of cooling and peeling

    bool isTimed() const { return platen.count() > 0 || waiting.count() > 0; }
    bool isWaiting() const { return waiting.count() > 0; }
    Seconds counted() const { return platen.count() > 0 ? platen : waiting; }
    Seconds total() const { return attended + platen + waiting; }
};

struct Route {
    std::vector<RouteStep> steps;
    std::optional<PressId> press; // the press it was reckoned for
    Seconds restAfter{0};

    Seconds total() const;
    std::optional<Celsius> firstTemperature() const;
};

// Pieces a decal must be pressed in on a platen: columns × rows, 1 × 1 where it fits either way round, else
// the way round that takes fewer. Pieces overlap by 20 mm (common practice, no source). A platen whose
// recorded measures could hold no two such overlaps counts as unmeasured and takes every decal whole.
struct PlatenPieces {
    int columns = 1;
    int rows = 1;
    int count() const { return columns * rows; }
};
PlatenPieces piecesOn(const Press& press, const Decal& decal);

// The press a garment is pressed on: the one its present attempt was begun on; else the first whose platen
// takes its decals whole, else the largest; none if the shop has none. Where the style is pressed on a small
// platen, only presses that have one are asked, if there is any. On a retired one nothing is begun.
const Press* pressFor(const ShopFacts& facts, const Garment& garment);
// The same for a garment of which it is known on which press its present attempt was begun, if on any.
const Press* pressFor(const ShopFacts& facts, const Garment& garment, std::optional<PressId> begunOn);

// Attended seconds in addition to the recipes' own times are common practice, no source (see route.cpp). The
// finishing press goes over all decals and so takes the coolest of their temperatures. REQUIRES: each decal's
// film is in facts. Steps of a film without a recipe are left out (it is held anyway).
Route routeOf(const ShopFacts& facts, const Garment& garment);
Route routeOn(const Press* press, const ShopFacts& facts, const Garment& garment);

// The usual title of a step of this kind; a route may say more ("Peel warm, one motion").
Phrase stepTitle(StepKind kind);
Sentence wayRoundTitle(Obstacle obstacle, WayRound way); // "Pillow under the zip"

} // namespace holdfast

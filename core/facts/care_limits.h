// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a label allows, axis by axis, in words. A garment may take no harsher treatment than its blank and
// each of its films allow: the stricter of two is the minimum on each axis, and professional cleaning the
// intersection of what both allow. Milder is always permitted.
// No care symbol is ever drawn: they are trademarks.
//
// Axes and steps: ISO 3758 as read through public tables (wash 30/40/50/60/70/95 °C, tumble 60/80 °C, iron
// 110/150/200 °C). That the edition of 2023 has other temperatures was not confirmed.

#include "core/trade/sentence.h"

#include <cstdint>
#include <vector>

namespace holdfast {

enum class Agitation { ByHand, VeryMild, Mild, Normal };
enum class Tumble { No, Low, Normal };
enum class Bleach { No, OxygenOnly, Any };

// Solvents a professional cleaner may use, as a set. A label that names P allows F as well.
enum class Cleaning : std::uint8_t { None = 0, P = 1, F = 2, W = 4, PF = 3, PW = 5, FW = 6, All = 7 };

struct CareLimits {
    int washCelsius = 40; // 0: do not wash
    Agitation agitation = Agitation::Normal;
    Tumble tumble = Tumble::Low;
    int ironCelsius = 110; // 0: do not iron
    Bleach bleach = Bleach::No;
    Cleaning cleaning = Cleaning::None;

    bool operator==(const CareLimits&) const = default;
};

// Commutative, associative, idempotent, never milder than either.
CareLimits stricter(const CareLimits& one, const CareLimits& other);

// "Machine wash at 40 °C", "Tumble dry low", … one phrase an axis, in the order of the care card.
std::vector<Sentence> careWords(const CareLimits& limits);

} // namespace holdfast

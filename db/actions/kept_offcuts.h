// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Offcuts worth keeping are on the shelf as rolls of their own.

#include "core/trade/result.h"
#include "db/actions/film_actions.h"
#include "db/actions/rows.h"

#include <span>
#include <string>

namespace holdfast::db {

// Each 20 mm or more both ways, none wider than the roll or longer than what was cut, together no more than
// the cut film; names the field that is not.
Result<Done> checkOffcuts(Connection& connection, RollId roll, Millimetres length,
                          std::span<const OffcutSize> offcuts);

// Puts the offcuts on the shelf: as old as their roll, with its stays and its test strips. What they were
// called: "R-31 (164 × 148 mm)".
std::vector<Sentence> keepOffcuts(Writer& writer, const RollRow& roll, std::span<const OffcutSize> offcuts);

} // namespace holdfast::db

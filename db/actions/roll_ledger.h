// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Moves of a roll's length ledger.

#include "core/trade/units.h"
#include "db/journal/writer.h"

#include <string>

namespace holdfast::db {

// What a move was for, in addition to its reason in words: figures tell film cut from film wasted by it.
enum class LengthKind { Received, Cut, TestStrip, Correction, UsedUp };

// `length` is negative where film was taken, and never 0.
void moveLength(Writer& writer, RollId roll, Millimetres length, const std::string& reason, LengthKind kind);

// "12.50 m"
std::string metres(Millimetres length);

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the rules hold is refused by the actions themselves, whatever a screen shows: the facts are read in
// the transaction that would do the work. A waiver lets a garment through. All throw SqliteFailure; Shop::act
// is their door.

#include "core/film/roll_condition.h"
#include "db/actions/rows.h"

#include <span>

namespace holdfast::db {

// How the rolls were kept, as reckoned by who acts: a long climate log is not read again for each step at the
// press. It is of the same file and the same readings. Null: it is read from the file.
using KnownConditions = const RollConditions*;

// "418-b is held. Unwashed: lot of 12 Oct, M, Moss: no wash load on record. Needed: put in wash, or let it
// through."
Result<Done> requireNotHeld(Connection& connection, const GarmentRow& garment, const Now& now,
                            KnownConditions known);

// Of each decal the holds that stop the knife, and those over the roll.
Result<Done> requireMayBeCut(Connection& connection, RollId roll, std::span<const DecalRow> decals,
                             const Now& now, KnownConditions known);

} // namespace holdfast::db

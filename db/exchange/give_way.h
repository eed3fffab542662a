// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What two laptops did, each rightly by what it knew, and the shop cannot hold both of: two rolls of one
// number, one blank kept for two garments, more film cut than there was. Nothing is lost over it; the later
// gives way, in words.

#include "core/trade/dates.h"
#include "core/trade/sentence.h"
#include "db/sqlite/changeset.h"

#include <optional>
#include <vector>

namespace holdfast::db {

class Connection;

// Why what was done at the press, applied already, cannot follow what is there: its garment is on another
// step, in another attempt, or was marked spoiled in this one already.
std::optional<Sentence> pressClash(Connection& connection, ChangesetView changeset);

// Garments let go of blanks that are not there, those of the changeset first, and get others where any are
// free; a lot or roll of which more was used than there was is corrected to nothing. Sentences that say so.
// What cannot be mended is still in ledger_fault.
std::vector<Sentence> mendLedgers(Connection& connection, ChangesetView changeset, Instant at);

// Whether a garment that is not begun keeps a blank though its order, of which the changeset speaks, is
// cancelled; and such garments let go of it, in sentences that say so.
bool isKeptByCancelled(Connection& connection, ChangesetView changeset);
std::vector<Sentence> giveBackOfCancelled(Connection& connection, ChangesetView changeset);

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The journal as a person reads it: one entry for each action, newest first.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/sentence.h"

#include <cstdint>
#include <optional>
#include <string>

namespace holdfast::db {

struct HistoryEntry {
    EntryId id;
    Instant at;
    std::string seat;                // the name of the laptop it was done on
    Sentence title;                  // "Took order 426"
    std::optional<EntryId> undoes;   // this entry is the undo of that one
    std::optional<EntryId> undoneBy; // that entry is the undo of this one
    std::int64_t bytes = 0;          // of what it recorded: how long undoing it will take

    bool isUndone() const { return undoneBy.has_value(); }
};

} // namespace holdfast::db

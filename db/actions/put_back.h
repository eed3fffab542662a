// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Doing again what was undone, and putting back orders that were undone or cancelled.

#include "core/trade/ids.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

namespace holdfast::db {

// `undo` is the undo of what is to be done again. Refused in words where later work is in the way. A blank
// that was reserved then and is another garment's now is no reason to refuse: another one is reserved, or the
// garment waits for one.
Result<EntryId> redo(Shop& shop, EntryId undo, const TellProgress& progress = {});

// An order that was undone is in the book again as it was; one that was cancelled is what it was before, and
// blanks are reserved for it where any are free. Refused in words for any other.
Result<Done> putBackOrder(Shop& shop, OrderId order);

} // namespace holdfast::db

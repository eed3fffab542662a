// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which entries are in effect and which were undone, as undos come and go.

#include "core/trade/ids.h"

namespace holdfast::db {

class Connection;

// `entry` is undone by `by`. An entry that was itself an undo puts the one before it in effect again,
// and so on down.
void markUndone(Connection& connection, EntryId entry, EntryId by);

// The other way about: what took `entry` back is gone.
void markStanding(Connection& connection, EntryId entry);

} // namespace holdfast::db

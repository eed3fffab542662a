#pragma once
// Which entries stand and which were taken back, as entries that take back others come and go.

#include "core/trade/ids.h"

namespace holdfast::db {

class Connection;

// `entry` is taken back by `by`. An entry that was itself a taking back lets the one before it stand again,
// and so on down.
void markUndone(Connection& connection, EntryId entry, EntryId by);

// The other way about: what took `entry` back is gone.
void markStanding(Connection& connection, EntryId entry);

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Brings a shop's tables up to the newest schema step.

#include <span>

namespace holdfast::db {

class Connection;

// The last step that was applied to the file; 0 for a new one.
int appliedSteps(Connection& connection);

// Applies the steps that are missing, all in one transaction with the new version. Throws SqliteFailure, the
// file then being as before.
void applySteps(Connection& connection, std::span<const char* const> steps);

} // namespace holdfast::db

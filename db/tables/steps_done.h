// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Steps at the press that were finished, of all orders and attempts. Throws SqliteFailure.

#include "core/quality/learned_times.h"
#include "db/sqlite/connection.h"
#include "db/tables/unread_facts.h"

#include <vector>

namespace holdfast::db {

// The latest first. One query over all of them: not for the thread of a window. Rows that cannot be read are
// noted in `unread`.
std::vector<StepDone> loadStepsDone(Connection& connection, const Now& now, UnreadFacts& unread);

} // namespace holdfast::db

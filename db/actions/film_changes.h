// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A film’s sheet changed, in words: each field with what it was.

#include "core/facts/film.h"
#include "core/trade/sentence.h"
#include "db/sqlite/connection.h"

#include <vector>

namespace holdfast::db {

// All but its recipe. Empty: nothing differs.
std::vector<Sentence> filmChanges(Connection& connection, const Film& before, const Film& after);

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Three months of the two places where the demo's rolls are, a reading every two hours: a warm spell, two
// damp ones, four days without a logger, and a back room that nobody has looked at since the day before
// yesterday.

#include "db/demo/demo_script.h"

namespace holdfast::db::demo {

inline constexpr const char* kFilmShelf = "Film shelf";
inline constexpr const char* kBackRoom = "Back room shelf";

void writeClimate(Script& script);

} // namespace holdfast::db::demo

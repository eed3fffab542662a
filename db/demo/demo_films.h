// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The demo's films and their recipes, and its rolls: received, moved, tested, used up.

#include "db/demo/demo_script.h"

namespace holdfast::db::demo {

void writeFilms(Script& script);
void writeRolls(Script& script);

} // namespace holdfast::db::demo

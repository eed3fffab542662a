// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The demo's workshop itself: its settings, its presses and their checks, its fairs.

#include "db/demo/demo_script.h"

namespace holdfast::db::demo {

inline constexpr int kFirstDay = -91;

void writeWorkshop(Script& script);

} // namespace holdfast::db::demo

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The demo's blank styles as their labels read, and its rail: deliveries, wash loads, counts.

#include "db/demo/demo_script.h"

namespace holdfast::db::demo {

void writeStyles(Script& script);
void writeRail(Script& script);

} // namespace holdfast::db::demo

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What happened in a reckoned day, written out as heat runs with clock times.

#include "core/press/day_plan_simulation.h"

namespace holdfast {

// A garment with nothing left for the platen is in the run that goes on when it is taken up.
DayPlan writtenOut(const TimedDay& day, const DayRecord& record, const DayScore& reached);

} // namespace holdfast

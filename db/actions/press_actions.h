// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person does at the press. Each is one journaled action.
//
// A garment under way always has exactly one open step until its route is done. Finishing a step opens the
// next one in the same action, so that closing the program loses nothing: the walk goes on where it was.

#include "core/facts/press.h"
#include "core/holds/finding.h"
#include "core/press/route.h"
#include "core/trade/result.h"
#include "db/actions/held.h"
#include "db/journal/shop.h"

#include <string>
#include <vector>

namespace holdfast::db {

// Opens the first step. Takes one unit of the lot whose blank is reserved. Refused in words where the order
// is not confirmed, the garment has no blank or a decal that is not cut, where a rule holds it that nobody
// let it through, or where another garment's hands-on step is open (`onPress` of the walk). What is under way
// is finished whatever holds it by then: half pressed it would be lost.
Result<Done> takeUp(Shop& shop, GarmentId garment, const Route& route, const Now& now,
                    KnownConditions known = nullptr);

// Finishes the open step and opens the next of the route; after the last one the garment rests. Refused in
// words while another garment is under the closed platen, unless the next step is a wait: a warm peel does
// not wait, so hands may turn to it between two steps of another garment. Its entry says so where the garment
// was under heat longer than the shop takes as harmless. Answers the key of the step now open, empty when
// pressed.
Result<std::string> finishStep(Shop& shop, GarmentId garment, const Route& route);

// Starts the count of the open step again from now (a platen opened too early, a clock set back).
Result<Done> restartStep(Shop& shop, GarmentId garment);

// Closes nothing: drops the open step and opens the one before it again. Before the first step: puts the
// garment back on the walk and its blank back on the rail, still kept for it.
Result<Done> backAStep(Shop& shop, GarmentId garment);

// All steps back at once, and the garment back on the walk. Refused once it had heat.
Result<Done> putBackOnWalk(Shop& shop, GarmentId garment);

// A person lets a held garment through, with a reason of 3–200 characters, in this attempt.
Result<Done> waive(Shop& shop, GarmentId garment, Rule rule, const std::string& reason);

// The garment is lost: its decals are to be cut again, another blank is kept if one is free, its steps begin
// again in a new attempt. Only once its pressing began, and before it is handed over. Cause 3–200 characters.
Result<Done> markSpoiled(Shop& shop, GarmentId garment, const std::string& cause);

Result<PressId> addPress(Shop& shop, const Press& press);
Result<Done> changePress(Shop& shop, const Press& press);
// 1–25 readings, each −20…300 °C; set 40–250 °C.
Result<Done> recordPressCheck(Shop& shop, PressId press, Celsius set, const std::vector<Celsius>& readings,
                              const std::string& by);

} // namespace holdfast::db

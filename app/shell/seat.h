// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What this laptop keeps for itself in the shop's notes: the last place, the light, and, from one window to
// the next, forms that are half filled.

#include "app/desk/shop_desk.h"
#include "app/shell/slip_edge.h"
#include "app/theme/tokens.h"

namespace holdfast::app {

struct BuiltPlace;

// Day until the person chose otherwise.
Light keptLight(db::Shop& shop);
void keepLight(db::Shop& shop, Light light);

// Printers and loudness were once chosen for each shop file; the first that is opened hands them on to this
// computer, so that nobody must choose again.
void handOnChoices(db::Shop& shop);

// The place that was open last; the first built one for a shop that was never open.
const BuiltPlace& keptPlace(db::Shop& shop);
void keepPlace(db::Shop& shop, const BuiltPlace& place);

// For the window that goes on with the shop, which takes them once.
void handOnForms(db::Shop& shop, const SlipEdge::Left& forms);
SlipEdge::Left takeForms(db::Shop& shop);

} // namespace holdfast::app

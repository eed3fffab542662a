// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a rule finds, as it is said on the fair table.

#include "app/places/fair_table/table_messages.h"

namespace holdfast::app {

TableMessage messageFrom(const Finding& finding);

// What a day waits for where the promise takes the time for it.
QString deliveryWords();

} // namespace holdfast::app

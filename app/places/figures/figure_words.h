// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words that the sheets of figures share.

#include "core/quality/share_interval.h"
#include "core/trade/units.h"

#include <QString>

#include <chrono>
#include <string>

namespace holdfast::app {

QString withCapital(const QString& text);
QString spanOf(const ShareInterval& interval);    // "4 % to 18 %"
QString lengthOf(Millimetres length);             // "3.4 m"; none: a dash
QString monthName(std::chrono::year_month month); // "Nov 2026"
QString placeOfOrders(const std::string& place);  // "The workshop", or the fair's name
QString dash();                                   // where nothing is known

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What one cell of the rail's grid says, in two lines: washed, unwashed and what of it is chosen for the
// wash; short or reserved, and drying.

#include "app/places/blank_rail/rail_stock.h"

#include <QRectF>

class QPainter;

namespace holdfast::app {

int cellHeight();
// The width that says all of it.
qreal cellWidth(const RailCount& count, std::int64_t inWash);
void paintCell(QPainter& painter, const QRectF& box, const RailCount& count, std::int64_t inWash,
               bool isCurrent);

} // namespace holdfast::app

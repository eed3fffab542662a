// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Wordings as they are cut. The outline that was kept with an order is the one that is painted, nested,
// printed and cut, whatever letters this machine has; where none was kept it is drawn with the letters that
// are here.

#include "app/theme/cut_outlines.h"
#include "core/facts/order.h"

#include <QColor>
#include <QRectF>
#include <QString>

#include <string>

class QPainter;

namespace holdfast::app {

// In units of its own; filled by odd and even. Empty where there is nothing to cut, or no shape for one of
// its letters: part of a name is never cut.
QPainterPath wordingOutline(const Wording& wording);

// What is to be kept of it, as SVG path data.
std::string outlineToKeep(const Wording& wording);

// The letters that this machine has no shape for, each once, with their numbers in Unicode, since a letter
// without a shape shows as an empty box: "山 (U+5C71), 田 (U+7530)". A letter that any of its fonts has is
// not missing; a coloured picture is no shape that a knife can follow.
QString lettersWithoutShape(const QString& text, Face face);

// As large as fits in `box`, centred; a dashed box where there is nothing to cut.
void paintWording(QPainter& painter, const QRectF& box, const Wording& wording, const QColor& film);
// Width over height of its ink.
double wordingAspect(const Wording& wording);

} // namespace holdfast::app

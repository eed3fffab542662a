// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the knife follows: drawings and letters as outlines, overlapping strokes grown together and holes
// taken out. The same shapes that drawings.h paints. May be asked for on any thread.

#include <QPainterPath>
#include <QString>

namespace holdfast::app {

// In units of the drawing's 100 x 100 sheet; filled by odd and even. Empty for unknown artwork.
QPainterPath artworkOutline(const QString& artwork);

// Letters of a face (see letteringFaces) in units of their own; empty where there is nothing to cut.
QPainterPath letteringOutline(const QString& text, const QString& face);

// The outline laid into a box whose upper left corner is 0, 0: as large as fits, centred; a side that falls
// short by the rounding to whole units (3 % at most) is drawn out to the box.
QPainterPath laidInto(const QPainterPath& outline, double width, double height);

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The stitch means something: solid thread is done, running stitch is planned, a sewn label is where you are.
// And the other small marks that widgets and delegates paint alike.

#include "app/theme/tokens.h"

#include <QBrush>
#include <QPainterPath>
#include <QPointF>
#include <QRectF>
#include <QSizeF>
#include <QString>

class QKeySequence;
class QPainter;

namespace holdfast::app {

// Solid thread: done.
void paintThread(QPainter& painter, QPointF from, QPointF to, const QColor& colour, qreal width = 3);
// Running stitch: planned, still to do.
void paintRunningStitch(QPainter& painter, QPointF from, QPointF to, const QColor& colour, qreal width = 3);
// One stitch as a bead of thread: filled when done, dashed outline when to come.
void paintStitch(QPainter& painter, const QRectF& box, const QColor& colour, bool isDone);
// The dashed seam just inside a label's edge, 3 px in.
void paintSewnLabel(QPainter& painter, const QRectF& label, const QColor& colour, qreal radius);

// A knot on the thread, 20 px across as a rule: filled with a tick, ringed with a dot, or dashed.
enum class Knot { Done, Current, Planned };
void paintKnot(QPainter& painter, QPointF centre, Knot knot, qreal diameter = 20);

// Diagonal stripes as a brush tile, clear between them. `ratio` is the device pixel ratio painted at.
QBrush hatch(const QColor& line, qreal ratio = 1);
void paintHatch(QPainter& painter, const QPainterPath& area, const QColor& line);

// A key cap. Its text for a sequence: "Ctrl W", "Enter", "B".
QString keyCapText(const QKeySequence& keys);
QSizeF keyCapSize(const QString& text);
void paintKeyCap(QPainter& painter, const QRectF& box, const QString& text, const QColor& ink);

// The focus ring about `framed`, outside of it.
void paintFocusRing(QPainter& painter, const QRectF& framed, qreal radius);

// An icon and words on a tint. `iconName` may be empty.
QSizeF chipSize(const QString& iconName, const QString& words);
void paintChip(QPainter& painter, QPointF topLeft, const QString& iconName, const QString& words, Tone tone);

// An outline of crisp hairlines: `width` px wholly inside `box`.
void paintOutline(QPainter& painter, const QRectF& box, qreal radius, const QColor& line, qreal width = 1,
                  bool isDashed = false);
// Ground and outline at once; pass an invalid colour for none.
void paintBox(QPainter& painter, const QRectF& box, qreal radius, const QColor& ground, const QColor& line,
              qreal width = 1, bool isDashed = false);

} // namespace holdfast::app

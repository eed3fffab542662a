// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The type scale: one entry for each kind of text, in pixels. Digits are tabular in the fonts themselves.

#include "app/theme/tokens.h"

#include <QFont>
#include <QPointF>
#include <QRectF>
#include <QString>

class QPainter;

namespace holdfast::app {

enum class Type {
    Countdown,     // 700 184/148, the seconds at the press
    Panel,         // 700 50/54, the panel's word
    Next,          // 700 34/40
    PlaceTitle,    // serif 600 25/32
    Number,        // 700 24/28, numbers of garments, amounts, the clock
    CardTitle,     // serif 600 18/24
    Value,         // 700 18/24, the value of a fact
    List,          // 500 16/24, lists read at the press
    ListStrong,    // 600 16/24
    Body,          // 400 15/20
    BodyStrong,    // 600 15/20, buttons and leads
    Support,       // 400 14/20
    SupportStrong, // 600 14/20
    Small,         // 400 13/18, the smallest there is
    SmallStrong,   // 600 13/18
};

// Loads the bundled fonts when first asked. Needs a QGuiApplication. Named so that QWidget::font does not
// hide it.
QFont fontOf(Type type);
int lineHeight(Type type);

// Width of one line of text.
qreal widthOf(const QString& text, Type type);
// As much of it as fits, with an ellipsis for the rest. Never for a reason, a time or an amount.
QString fitted(const QString& text, Type type, qreal width);

// Paints one line with its left end and baseline at `baseline`; returns x after it, to set the next run
// there.
qreal paintRun(QPainter& painter, QPointF baseline, const QString& text, Type type, const QColor& ink);

// Paints one line in `box`, centred in height; Qt::AlignLeft, AlignRight or AlignHCenter across. Never
// elides.
void paintLine(QPainter& painter, const QRectF& box, const QString& text, Type type, const QColor& ink,
               Qt::Alignment across = Qt::AlignLeft);

} // namespace holdfast::app

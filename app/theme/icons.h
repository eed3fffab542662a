// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The line icons of resources/icons, tinted in any ink. Loaded once; tinted pixmaps are cached.

#include <QColor>
#include <QPixmap>
#include <QRectF>
#include <QString>

class QPainter;

namespace holdfast::app {

// `name` is the file's name without ".svg". A square of `size` logical pixels at a device pixel ratio.
// An unknown name is a mistake of the programmer: asserts, and gives an empty pixmap.
QPixmap iconPixmap(const QString& name, const QColor& ink, int size, qreal ratio);

// Paints the icon as the largest square centred in `box`, at the painter's own ratio.
void paintIcon(QPainter& painter, const QRectF& box, const QString& name, const QColor& ink);

bool hasIcon(const QString& name);

} // namespace holdfast::app

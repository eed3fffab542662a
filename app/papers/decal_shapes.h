// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Shapes of decals, made when they are first drawn and kept: decals that are cut alike share theirs.

#include "core/cutting/nest.h"
#include "core/facts/order.h"

#include <QHash>
#include <QPainterPath>
#include <QString>
#include <QTransform>

namespace holdfast::app {

// A decal's shape in mm, as it is worn, from its upper left corner. Empty where there is nothing to cut: a
// drawing that is not among the artwork, words without a letter that can be drawn.
QPainterPath decalShape(const Decal& decal);

// The same for decals of the same content and size.
QString likenessOf(const Decal& decal);

// From a decal's own millimetres to those of the film as it is cut, mirrored: along and across.
QTransform ontoSheet(const NestedDecal& decal);

class DecalShapes {
public:
    const QPainterPath& of(const Decal& decal);

private:
    QHash<QString, QPainterPath> m_shapes; // by likeness
};

} // namespace holdfast::app

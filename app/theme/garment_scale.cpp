// SPDX-License-Identifier: GPL-3.0-or-later
// The measures of the drawn garments, which core keeps, for those who paint.

#include "core/garments/garment_scale.h"
#include "app/theme/drawings.h"

namespace holdfast::app {

QRectF garmentBody(const QString& outline) {
    const SheetBox& body = garmentMeasures(outline.toStdString()).body;
    return {QPointF(body.left, body.top), QPointF(body.right, body.bottom)};
}

double millimetresPerUnit(const QString& outline, const QString& size) {
    return holdfast::millimetresPerUnit(outline.toStdString(), size.toStdString());
}

} // namespace holdfast::app

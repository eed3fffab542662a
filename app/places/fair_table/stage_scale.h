// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// From millimetres on a garment to pixels on the stage and back. Millimetres are those of a placement: below
// the top seam, aside of the centre line with the wearer's left positive. Seen from the front the wearer's
// left is at our right; seen from the back it is at our left.

#include "core/press/layers.h"

#include <QPointF>
#include <QRectF>
#include <QString>

namespace holdfast::app {

class StageScale {
public:
    StageScale() = default;
    // The drawn garment as large as fits in `box`.
    StageScale(const QRectF& box, const QString& outline, const QString& size, Side side);

    const QRectF& sheet() const { return m_sheet; }     // where the garment's sheet is painted
    const QRectF& garment() const { return m_garment; } // its ink
    double pixelsPerMillimetre() const { return m_scale; }
    QPointF seam() const { return m_seam; } // top seam at the centre line

    QRectF rectOf(Millimetres below, Millimetres aside, Millimetres width, Millimetres height) const;
    Millimetres belowAt(double y) const;
    Millimetres asideAt(double x) const;
    Millimetres lengthOf(double pixels) const;

private:
    QRectF m_sheet;
    QRectF m_garment;
    QPointF m_seam;
    double m_scale = 1;
    double m_towardsLeft = 1; // direction of the wearer's left on the screen
};

} // namespace holdfast::app

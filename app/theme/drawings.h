// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Drawn things: garments in their cloth, decals in their film, lettering, and rolls seen from the side.
// Outlines are tee, long-sleeve, hoodie, tote, bib, bodysuit, cap and apron, on a sheet of 240 x 260 units;
// artworks are the names in resources/decals. Pictures are cached and drawn again when the light changes.

#include <QColor>
#include <QFont>
#include <QPainterPath>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>

class QPainter;

namespace holdfast::app {

inline constexpr double kGarmentSheetWidth = 240.0;
inline constexpr double kGarmentSheetHeight = 260.0;

QStringList garmentOutlines();
QStringList artworks();

// The garment as large as fits in `box`, centred, its lines a darker shade of the cloth; dark cloth gets
// light lines in the evening. An unknown outline is drawn as a tee.
void paintGarment(QPainter& painter, const QRectF& box, const QString& outline, const QColor& cloth);
// The same from behind, without what only the front has: a zip, a pocket.
void paintGarmentBack(QPainter& painter, const QRectF& box, const QString& outline, const QColor& cloth);

// Where paintGarment puts the 240 x 260 sheet inside `box`, to lay decals over it.
QRectF garmentSheet(const QRectF& box);

// The area that can be printed on, in sheet units.
QRectF garmentBody(const QString& outline);

// Millimetres for one sheet unit, so that a decal is at true scale. `size` is the size's name as the
// maker wrote it (XS ... 3XL, months or years for children); an unknown size counts as M. The widths across
// are invented, middling ones (core/garments/garment_scale.h).
double millimetresPerUnit(const QString& outline, const QString& size);

// The artwork cut in one film, as large as fits in `box`, centred: its ink touches the box on two sides, so a
// box at true scale shows the decal at true scale. Unknown artwork paints a dashed box.
void paintDecal(QPainter& painter, const QRectF& box, const QString& artwork, const QColor& film);
// Width over height of the artwork's ink.
double artworkAspect(const QString& artwork);

// Letters cut in one film, as large as fits in `box`, centred; a dashed box where there are none. Their
// outline is that of wording_outline.h.
void paintLettering(QPainter& painter, const QRectF& box, const QPainterPath& letters, const QColor& film);
// What words are painted and cut in, of no particular size. Faces: "serif", "sans".
QStringList letteringFaces();
QFont letteringFont(const QString& face);

// The end of a roll, rings about an open core. Its area grows with the metres on it.
double rollRadius(double metres);
void paintRoll(QPainter& painter, QPointF centre, double metres, const QColor& film);

// A shade of film or cloth as a rounded square, outlined so that it stands out from any ground.
void paintSwatch(QPainter& painter, const QRectF& box, const QColor& shade, qreal radius = 4);
// The line that goes with a shade: darker, or lighter for dark shades in the evening.
QColor outlineOf(const QColor& shade);

// The program's mark, a thimble and a tern.
void paintMark(QPainter& painter, const QRectF& box, const QColor& ink);

} // namespace holdfast::app

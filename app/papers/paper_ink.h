// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Draws on paper in black, in millimetres from the paper's upper left corner. Letters are text, so that
// a PDF can be searched, or as outlines, so that a drawing needs no font.

#include "app/papers/paper_type.h"

#include <QPainterPath>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <QTransform>

#include <utility>

class QPainter;

namespace holdfast::app {

enum class Letters { AsText, AsOutlines };
enum class Across { Left, Middle, Right };

class PaperInk {
public:
    // The painter's unit is a tenth of a millimetre; see paper_files.h.
    PaperInk(QPainter& painter, Letters letters);

    // One line; `at` is its left end, middle or right end on the baseline.
    void line(QPointF at, const QString& text, const PaperType& type, Across across = Across::Left);
    // Lines that break at this width, from this top edge down; returns where they end.
    double lines(QPointF at, double width, const QString& text, const PaperType& type,
                 Across across = Across::Left);

    void rule(double left, double right, double y, double thick = 0.25);
    // Along a dashed line paper is torn; nothing else on paper is dashed.
    void tear(double x, double top, double bottom);
    void frame(const QRectF& box, double thick = 0.5, double radius = 0);
    // To be ticked by hand, or ticked already.
    void tickBox(QPointF corner, double side, bool isTicked = false);
    void fill(const QPainterPath& shape, QPointF at = {});
    void stroke(const QPainterPath& shape, QPointF at, double thick);
    // A QR code, its quiet zone within the box.
    void code(const QRectF& box, std::string_view text);
    // The garment as large as fits in the box, in lines; returns where its sheet lies (theme/drawings.h).
    QRectF garment(const QRectF& box, const QString& outline);

    // All that `draw` draws is placed so; the transform moves by millimetres.
    template <class Draw>
    void placed(const QTransform& where, Draw&& draw) {
        begin(where);
        draw();
        end();
    }
    template <class Draw>
    void moved(QPointF to, double scale, Draw&& draw) {
        placed(QTransform(scale, 0, 0, scale, to.x(), to.y()), std::forward<Draw>(draw));
    }

private:
    void begin(const QTransform& where);
    void end();

    QPainter& m_painter;
    Letters m_letters;
};

} // namespace holdfast::app

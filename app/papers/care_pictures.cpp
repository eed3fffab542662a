// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/care_pictures.h"

#include <initializer_list>
#include <utility>

namespace holdfast::app {

namespace {

void addLine(QPainterPath& picture, std::initializer_list<QPointF> points, bool isClosed = false) {
    const QPointF* first = points.begin();
    picture.moveTo(*first);
    for (const QPointF* each = first + 1; each != points.end(); ++each)
        picture.lineTo(*each);
    if (isClosed)
        picture.closeSubpath();
}

void addShirt(QPainterPath& picture) {
    addLine(picture, {{2.6, 1.2},
                      {0.6, 2.4},
                      {1.4, 3.9},
                      {2.2, 3.5},
                      {2.2, 7.2},
                      {5.8, 7.2},
                      {5.8, 3.5},
                      {6.6, 3.9},
                      {7.4, 2.4},
                      {5.4, 1.2}});
    picture.moveTo(2.6, 1.2);
    picture.quadTo(4, 2.8, 5.4, 1.2);
}

// A shirt and an arrow that turns through it.
QPainterPath insideOut() {
    QPainterPath picture;
    addShirt(picture);
    picture.moveTo(2.9, 5.9);
    picture.quadTo(4, 7, 5, 5.2);
    addLine(picture, {{4.1, 5.2}, {5.1, 4.9}, {5.3, 5.9}});
    return picture;
}

// Three drops.
QPainterPath water() {
    QPainterPath picture;
    const auto drop = [&picture](double x, double y, double size) {
        picture.moveTo(x, y);
        picture.cubicTo(x + size * 0.9, y + size * 1.1, x + size * 0.7, y + size * 2, x, y + size * 2);
        picture.cubicTo(x - size * 0.7, y + size * 2, x - size * 0.9, y + size * 1.1, x, y);
    };
    drop(4, 0.8, 1.9);
    drop(1.7, 4.4, 1.3);
    drop(6.3, 4.4, 1.3);
    return picture;
}

QPainterPath bottle() {
    QPainterPath picture;
    addLine(picture, {{3.2, 1.9}, {3.2, 0.8}, {4.8, 0.8}, {4.8, 1.9}}, true);
    picture.moveTo(3.2, 1.9);
    picture.quadTo(1.9, 2.6, 1.9, 3.8);
    addLine(picture, {{1.9, 3.8}, {1.9, 7.3}, {6.1, 7.3}, {6.1, 3.8}});
    picture.quadTo(6.1, 2.6, 4.8, 1.9);
    addLine(picture, {{1.9, 4.7}, {6.1, 4.7}});
    return picture;
}

// A washing line with a shirt pegged on it by its shoulders.
QPainterPath washingLine() {
    QPainterPath shirt;
    addShirt(shirt);
    QPainterPath picture = QTransform::fromTranslate(0.6, 0.9).scale(0.85, 0.92).map(shirt);
    picture.moveTo(0.2, 1.4);
    picture.quadTo(4, 2.6, 7.8, 1.4);
    addLine(picture, {{2.8, 0.9}, {2.8, 2.7}});
    addLine(picture, {{5.2, 0.9}, {5.2, 2.7}});
    return picture;
}

// A board on crossed legs with a cloth over it.
QPainterPath board() {
    QPainterPath picture;
    addLine(picture, {{0.5, 3.1}, {6.8, 3.1}});
    picture.quadTo(7.8, 2.7, 7, 2.2);
    addLine(picture, {{7, 2.2}, {0.5, 2.2}, {0.5, 3.1}});
    addLine(picture, {{2, 3.1}, {5.6, 7.3}});
    addLine(picture, {{5.6, 3.1}, {2, 7.3}});
    addLine(picture, {{2.2, 2.2}, {2.6, 1}, {5, 1}, {5.4, 2.2}});
    return picture;
}

QPainterPath hanger() {
    QPainterPath picture;
    picture.moveTo(3, 1.8);
    picture.cubicTo(3, 0.3, 5.2, 0.5, 4.9, 1.9);
    picture.quadTo(4.7, 2.6, 4, 2.9);
    addLine(picture, {{4, 2.9}, {4, 3.5}});
    addLine(picture, {{4, 3.5}, {0.6, 6.2}, {7.4, 6.2}}, true);
    return picture;
}

QPainterPath sewnLabel() {
    QPainterPath picture;
    picture.addRoundedRect(1.5, 1.6, 5, 5.6, 0.4, 0.4);
    addLine(picture, {{2.5, 0.8}, {2.5, 2.4}});
    addLine(picture, {{5.5, 0.8}, {5.5, 2.4}});
    for (const double y : {3.6, 4.8, 6.0})
        addLine(picture, {{2.6, y}, {5.4, y}});
    return picture;
}

} // namespace

QPainterPath carePicture(CareMatter matter) {
    switch (matter) {
    case CareMatter::InsideOut:
        return insideOut();
    case CareMatter::Wash:
        return water();
    case CareMatter::Detergent:
        return bottle();
    case CareMatter::Dry:
        return washingLine();
    case CareMatter::Iron:
        return board();
    case CareMatter::DryClean:
        return hanger();
    case CareMatter::Label:
        return sewnLabel();
    }
    return {};
}

QPainterPath clockPicture() {
    QPainterPath picture;
    picture.addEllipse(QPointF(4, 4), 3.4, 3.4);
    addLine(picture, {{4, 1.9}, {4, 4}, {5.5, 5}});
    return picture;
}

} // namespace holdfast::app

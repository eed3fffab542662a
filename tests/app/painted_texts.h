// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every text that a window paints, read where it reaches the paint device: labels, buttons, and what widgets
// paint themselves. Each run comes with the widget that paints it and the place it takes in the window.

#include <QRectF>
#include <QString>

#include <vector>

class QWidget;

namespace holdfast::app::test {

struct PaintedText {
    QString text;
    QWidget* widget = nullptr;
    QRectF box;    // of the letters, in the widget
    QRectF clip;   // what the painter was held to, in the widget; empty: nothing
    QString place; // the widget's class and name, for a person
};

std::vector<PaintedText> textsPaintedBy(QWidget& window);

} // namespace holdfast::app::test

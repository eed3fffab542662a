// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Small drawings of a roll's panel.

#include "app/places/film_shelf/shelf_words.h"

#include <QColor>
#include <QWidget>

namespace holdfast::app {

class RollSwatch : public QWidget {
public:
    RollSwatch();
    void setShade(const QColor& shade);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QColor m_shade;
};

// How much of the roll is spoken for, in the roll's own film.
class SpokenForBar : public QWidget {
public:
    SpokenForBar();
    void set(double share, const QColor& shade);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    double m_share = 0;
    QColor m_shade;
};

} // namespace holdfast::app

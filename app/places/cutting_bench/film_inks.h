// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is drawn on a film and can be seen there, whatever its shade.

#include <QColor>

namespace holdfast::app {

struct FilmInks {
    explicit FilmInks(const QColor& shade);

    QColor film;  // its shade; in the evening light shades are dimmed
    QColor line;  // outlines, weeding frames, the parting cut
    QColor decal; // what is left on the carrier sheet
    QColor edge;
    QColor core;
    QColor shine;
    QColor patch; // the ground of words and numbers on the film
    QColor words; // on that ground
};

} // namespace holdfast::app

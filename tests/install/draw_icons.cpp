// SPDX-License-Identifier: GPL-3.0-or-later
// Draws resources/program/holdfast.svg to the PNG files beside it: `ninja holdfast_draw_icons`, run it once
// after a change of the drawing, and commit what it wrote.

#include "tests/install/icon_drawing.h"

#include <QGuiApplication>

int main(int argc, char** argv) {
    using namespace holdfast::install_test;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    for (const int size : kIconSizes)
        if (!drawnIcon(size).save(iconFile(size)))
            return 1;
    return 0;
}

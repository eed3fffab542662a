// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The program's icon, drawn from its SVG at one size.

#include <QImage>
#include <QPainter>
#include <QString>
#include <QSvgRenderer>

namespace holdfast::install_test {

// The sizes that the hicolor theme of the freedesktop.org Icon Theme Specification has for programs.
inline constexpr int kIconSizes[] = {16, 24, 32, 48, 64, 128, 256, 512};

inline QString programFolder() {
    return QStringLiteral(HOLDFAST_SOURCE_DIR "/resources/program");
}

inline QString iconFile(int size) {
    return QStringLiteral("%1/holdfast-%2.png").arg(programFolder()).arg(size);
}

inline QImage drawnIcon(int size) {
    QImage image(size, size, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    QSvgRenderer(programFolder() + QStringLiteral("/holdfast.svg")).render(&painter);
    return image;
}

} // namespace holdfast::install_test

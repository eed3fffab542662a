// SPDX-License-Identifier: GPL-3.0-or-later
// The drawings: what they say of themselves is what is seen.
#include "app/theme/drawings.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QImage>
#include <QPainter>
#include <QSvgRenderer>

namespace holdfast::app::test {

namespace {

constexpr int kPixels = 400;

// What is dark of a drawing painted on white.
QRect inkSeen(const QString& artwork) {
    QImage sheet(kPixels, kPixels, QImage::Format_RGB32);
    sheet.fill(Qt::white);
    QPainter painter(&sheet);
    painter.setRenderHint(QPainter::Antialiasing);
    QSvgRenderer(QStringLiteral(":/decals/%1.svg").arg(artwork)).render(&painter);
    painter.end();
    QRect seen;
    for (int y = 0; y < kPixels; ++y)
        for (int x = 0; x < kPixels; ++x)
            if (qGray(sheet.pixel(x, y)) < 128)
                seen |= QRect(x, y, 1, 1);
    return seen;
}

} // namespace

TEST(Drawings, ArtworkIsAsWideForItsHeightAsItsInk) {
    ASSERT_GE(artworks().size(), 7);
    for (const QString& artwork : artworks()) {
        const QRect ink = inkSeen(artwork);
        ASSERT_FALSE(ink.isEmpty()) << qPrintable(artwork);
        EXPECT_NEAR(artworkAspect(artwork), static_cast<double>(ink.width()) / ink.height(), 0.02)
            << qPrintable(artwork);
    }
    EXPECT_EQ(artworkAspect(QStringLiteral("no such drawing")), 1.0);
}

// Painted into a box of its own shape, the ink touches all four sides of it.
TEST(Drawings, ADecalFillsItsBox) {
    for (const QString& artwork : artworks()) {
        const double aspect = artworkAspect(artwork);
        const QSize size =
            aspect > 1 ? QSize(kPixels, qRound(kPixels / aspect)) : QSize(qRound(kPixels * aspect), kPixels);
        QImage sheet(size, QImage::Format_RGB32);
        sheet.fill(Qt::white);
        QPainter painter(&sheet);
        paintDecal(painter, sheet.rect(), artwork, Qt::black);
        painter.end();
        QRect seen;
        for (int y = 0; y < size.height(); ++y)
            for (int x = 0; x < size.width(); ++x)
                if (qGray(sheet.pixel(x, y)) < 128)
                    seen |= QRect(x, y, 1, 1);
        EXPECT_LE(seen.left(), 3) << qPrintable(artwork);
        EXPECT_LE(seen.top(), 3) << qPrintable(artwork);
        EXPECT_GE(seen.right(), size.width() - 4) << qPrintable(artwork);
        EXPECT_GE(seen.bottom(), size.height() - 4) << qPrintable(artwork);
    }
}

} // namespace holdfast::app::test

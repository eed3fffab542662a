// SPDX-License-Identifier: GPL-3.0-or-later
// The dyes can be read by day and in the evening; what is drawn is at the scale it says.

#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <gtest/gtest.h>

#include <QFontInfo>
#include <QImage>
#include <QKeySequence>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {
namespace {

double channel(double value) {
    return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& colour) {
    return 0.2126 * channel(colour.redF()) + 0.7152 * channel(colour.greenF()) +
           0.0722 * channel(colour.blueF());
}

// WCAG 2, "contrast ratio".
double contrast(const QColor& one, const QColor& other) {
    const double a = luminance(one);
    const double b = luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

TEST(Tokens, EveryTextCanBeReadOnEveryGroundItStandsOn) {
    for (const Light wanted : {Light::Day, Light::Evening}) {
        const Tokens& dyes = tokens(wanted);
        for (const QColor& ground : {dyes.ground, dyes.card, dyes.sunk}) {
            for (const QColor& ink : {dyes.ink, dyes.ink2, dyes.ink3}) {
                EXPECT_GE(contrast(ink, ground), 4.75)
                    << ink.name().toStdString() << ground.name().toStdString();
            }
        }
        EXPECT_GE(contrast(dyes.ink, dyes.bench), 4.75);
        EXPECT_GE(contrast(dyes.ink2, dyes.bench), 4.75);
        EXPECT_GE(contrast(dyes.madder, dyes.madderTint), 4.75);
        EXPECT_GE(contrast(dyes.weld, dyes.weldTint), 4.75);
        EXPECT_GE(contrast(dyes.green, dyes.greenTint), 4.75);
        EXPECT_GE(contrast(dyes.indigo, dyes.woad), 4.75);
        EXPECT_GE(contrast(dyes.ink, dyes.woad), 4.75);
        EXPECT_GE(contrast(dyes.onIndigo, dyes.indigo), 4.75);
        EXPECT_GE(contrast(dyes.onIndigo, dyes.indigoDeep), 4.75);
        EXPECT_GE(contrast(dyes.railInk, dyes.rail), 4.75);
    }
}

TEST(Tokens, EdgesOfControlsAndTheFocusRingStandOutThreeToOne) {
    for (const Light wanted : {Light::Day, Light::Evening}) {
        const Tokens& dyes = tokens(wanted);
        EXPECT_GE(contrast(dyes.edge, dyes.card), 3.0);
        EXPECT_GE(contrast(dyes.edge, dyes.ground), 3.0);
        EXPECT_GE(contrast(dyes.indigo, dyes.ground), 3.0);
        EXPECT_GE(contrast(dyes.railThread, dyes.rail), 3.0);
    }
}

TEST(Type, BundledFontsAreTheOnesUsedAndDigitsKeepTheirColumn) {
    EXPECT_EQ(QFontInfo(fontOf(Type::Body)).family(), QStringLiteral("Holdfast Sans"));
    EXPECT_EQ(QFontInfo(fontOf(Type::CardTitle)).family(), QStringLiteral("Holdfast Serif"));
    for (const Type type : {Type::Body, Type::BodyStrong, Type::Number, Type::CardTitle}) {
        for (const char digit : std::string("023456789")) {
            EXPECT_DOUBLE_EQ(widthOf(QString(QLatin1Char(digit)), type), widthOf(QStringLiteral("1"), type));
        }
    }
}

TEST(Icons, AreTintedInTheInkAskedForAtTheRatioAskedFor) {
    const QColor ink(10, 200, 30);
    const QPixmap tinted = iconPixmap(QStringLiteral("tick"), ink, 20, 2.0);
    EXPECT_EQ(tinted.width(), 40);
    EXPECT_DOUBLE_EQ(tinted.devicePixelRatio(), 2.0);
    const QImage image = tinted.toImage().convertToFormat(QImage::Format_ARGB32);
    int covered = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (qAlpha(image.pixel(x, y)) == 255) {
                ++covered;
                EXPECT_EQ(image.pixel(x, y), ink.rgb());
            }
        }
    }
    EXPECT_GT(covered, 20);
}

TEST(KeyCaps, SayTheKeyAsAPersonWould) {
    EXPECT_EQ(keyCapText(QKeySequence(QStringLiteral("Ctrl+W"))), QStringLiteral("Ctrl W"));
    EXPECT_EQ(keyCapText(QKeySequence(Qt::Key_Return)), QStringLiteral("Enter"));
    EXPECT_EQ(keyCapText(QKeySequence(Qt::Key_Plus)), QStringLiteral("+"));
    EXPECT_EQ(keyCapText(QKeySequence(QStringLiteral("Ctrl++"))), QStringLiteral("Ctrl +"));
    EXPECT_EQ(keyCapText(QKeySequence(QStringLiteral("B"))), QStringLiteral("B"));
}

// Where something other than clear was painted.
QRect inkIn(const QImage& image) {
    QRect ink;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            if (qAlpha(image.pixel(x, y)) > 127) {
                ink |= QRect(x, y, 1, 1);
            }
        }
    }
    return ink;
}

TEST(Drawings, DecalFillsTheBoxThatItsAspectAsksFor) {
    for (const QString& artwork : artworks()) {
        QImage image(400, 400, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        const QRectF box(50, 60, 120 * artworkAspect(artwork), 120);
        QPainter painter(&image);
        paintDecal(painter, box, artwork, Qt::red);
        painter.end();
        const QRect ink = inkIn(image);
        EXPECT_NEAR(ink.left(), box.left(), 2.0) << artwork.toStdString();
        EXPECT_NEAR(ink.top(), box.top(), 2.0) << artwork.toStdString();
        EXPECT_NEAR(ink.width(), box.width(), 3.0) << artwork.toStdString();
        EXPECT_NEAR(ink.height(), box.height(), 3.0) << artwork.toStdString();
    }
}

TEST(Drawings, WhiteInAnArtworkIsAHoleInTheFilm) {
    QImage image(400, 400, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    // The fish's ink starts at x 4 of its sheet and is 92 wide; its eye is at 20, 47.
    paintDecal(painter, QRectF(0, 0, 368, 368 / artworkAspect(QStringLiteral("fish"))),
               QStringLiteral("fish"), Qt::red);
    painter.end();
    const QRect ink = inkIn(image);
    const int eye = (20 - 4) * 4;
    EXPECT_EQ(qAlpha(image.pixel(eye, ink.center().y() - 12)), 0);
    EXPECT_EQ(qAlpha(image.pixel(eye + 20, ink.center().y())), 255);
}

TEST(Drawings, GarmentsGrowWithTheirSizeAndChildrenAreSmaller) {
    const QString tee = QStringLiteral("tee");
    EXPECT_DOUBLE_EQ(millimetresPerUnit(tee, QStringLiteral("M")), 520.0 / 128);
    const QStringList sizes = {QStringLiteral("2XS"), QStringLiteral("XS"), QStringLiteral("S"),
                               QStringLiteral("M"),   QStringLiteral("L"),  QStringLiteral("XL"),
                               QStringLiteral("2XL"), QStringLiteral("3XL")};
    for (qsizetype at = 1; at < sizes.size(); ++at) {
        EXPECT_GT(millimetresPerUnit(tee, sizes[at]), millimetresPerUnit(tee, sizes[at - 1]));
    }
    EXPECT_DOUBLE_EQ(millimetresPerUnit(tee, QStringLiteral("XXL")),
                     millimetresPerUnit(tee, QStringLiteral("2XL")));
    EXPECT_DOUBLE_EQ(millimetresPerUnit(tee, QStringLiteral("one size")),
                     millimetresPerUnit(tee, QStringLiteral("M")));
    EXPECT_LT(millimetresPerUnit(tee, QStringLiteral("3-4 y")),
              millimetresPerUnit(tee, QStringLiteral("9-10 y")));
    EXPECT_LT(millimetresPerUnit(tee, QStringLiteral("9-10 y")),
              millimetresPerUnit(tee, QStringLiteral("S")));
    const QString bodysuit = QStringLiteral("bodysuit");
    EXPECT_LT(millimetresPerUnit(bodysuit, QStringLiteral("0-3 months")),
              millimetresPerUnit(bodysuit, QStringLiteral("6-12 months")));
}

TEST(Drawings, EveryGarmentHasItsOutlineAndABodyInsideTheSheet) {
    const QRectF sheet(0, 0, kGarmentSheetWidth, kGarmentSheetHeight);
    for (const QString& outline : garmentOutlines()) {
        EXPECT_TRUE(sheet.contains(garmentBody(outline))) << outline.toStdString();
        QImage image(240, 260, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        paintGarment(painter, QRectF(0, 0, 240, 260), outline, QColor(200, 40, 40));
        painter.end();
        // The body's middle is cloth (the hoodie's is its zip: a quarter across is cloth on all).
        const QRectF body = garmentBody(outline);
        const QPoint at(static_cast<int>(body.left() + body.width() / 3),
                        static_cast<int>(body.center().y()));
        EXPECT_EQ(image.pixelColor(at), QColor(200, 40, 40)) << outline.toStdString();
    }
}

TEST(Drawings, RollsGrowWithTheMetresOnThemUpToAShelfsHeight) {
    EXPECT_LT(rollRadius(0.8), rollRadius(3.4));
    EXPECT_LT(rollRadius(3.4), rollRadius(9.6));
    EXPECT_DOUBLE_EQ(rollRadius(50), rollRadius(100));
    EXPECT_DOUBLE_EQ(rollRadius(-1), rollRadius(0));
}

} // namespace
} // namespace holdfast::app

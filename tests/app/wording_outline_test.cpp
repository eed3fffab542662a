// SPDX-License-Identifier: GPL-3.0-or-later
// Wordings as they are cut: by the outline kept with the order, whatever letters the machine has.

#include "app/theme/wording_outline.h"

#include "app/papers/decal_shapes.h"
#include "app/theme/drawings.h"
#include "db/actions/order_actions.h"
#include "db/tables/facts.h"
#include "tests/app/shop_fixture.h"

#include <QImage>
#include <QPainter>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace holdfast::app::test {
namespace {

// For private use (Unicode 15, chapter 23.5): no font of a Debian system has a shape for it.
const std::string kNoLetter = "\xEE\x84\xA3"; // U+E123

double apart(const QPainterPath& one, const QPainterPath& other) {
    if (one.elementCount() != other.elementCount())
        return 1000;
    double most = 0;
    for (int at = 0; at < one.elementCount(); ++at) {
        const QPainterPath::Element left = one.elementAt(at);
        const QPainterPath::Element right = other.elementAt(at);
        if (left.type != right.type)
            return 1000;
        most = std::max({most, std::abs(left.x - right.x), std::abs(left.y - right.y)});
    }
    return most;
}

TEST(WordingOutline, WhatIsKeptIsWhatWasDrawn) {
    for (const Face face : {Face::BookSerif, Face::Plain})
        for (const char* text : {"Juno", "Žofie & Ågren", "8% of 10", "i", "שלום", "عربى"}) {
            const Wording typed{text, face};
            if (!lettersWithoutShape(QString::fromUtf8(text), face).isEmpty())
                continue; // this machine has no such letters
            Wording kept = typed;
            kept.outline = outlineToKeep(typed);
            EXPECT_GT(kept.outline.size(), 20u) << text;
            EXPECT_LE(apart(wordingOutline(typed), wordingOutline(kept)), 0.0051) << text;
            EXPECT_EQ(outlineToKeep(kept), kept.outline) << text;
            EXPECT_NEAR(wordingAspect(kept), wordingAspect(typed), 0.01) << text;
        }
}

// The same as on a laptop that has another face under that name, or has the letters and this one has not.
TEST(WordingOutline, KeptOutlineIsCutWhateverLettersTheMachineHas) {
    const std::string serif = outlineToKeep({"Juno", Face::BookSerif});
    const QPainterPath drawn = wordingOutline({"Juno", Face::BookSerif});
    EXPECT_LE(apart(wordingOutline({"Juno", Face::Plain, serif}), drawn), 0.0051);
    EXPECT_GT(apart(wordingOutline({"Juno", Face::Plain}), drawn), 1);
    EXPECT_LE(apart(wordingOutline({kNoLetter, Face::Plain, serif}), drawn), 0.0051);
}

TEST(WordingOutline, LettersThatNoFontHasAreNamedAndNothingOfTheWordingIsCut) {
    const QString none = QString::fromStdString(kNoLetter);
    EXPECT_EQ(
        lettersWithoutShape(QStringLiteral("Jun") + none + QStringLiteral("o ") + none, Face::BookSerif),
        none + QStringLiteral(" (U+E123)"));
    EXPECT_EQ(lettersWithoutShape(QStringLiteral("Juno & Žofie, 8 %"), Face::Plain), QString());
    EXPECT_EQ(lettersWithoutShape(QStringLiteral("  "), Face::Plain), QString());
    EXPECT_TRUE(wordingOutline({"Jun" + kNoLetter, Face::BookSerif}).isEmpty());
    EXPECT_EQ(outlineToKeep({"Jun" + kNoLetter, Face::BookSerif}), "");
}

TEST(WordingOutline, WhatIsNoOutlineIsDrawnWithTheLettersThatAreHere) {
    const QPainterPath here = wordingOutline({"Juno", Face::Plain});
    for (const char* broken : {"nonsense", "M1", "M1 2X", "C1 2 3 4", "M1 2L"})
        EXPECT_EQ(wordingOutline({"Juno", Face::Plain, broken}), here) << broken;
}

TEST(WordingOutline, PaintsADashedBoxWhereThereIsNothingToCut) {
    QImage image(120, 60, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintWording(painter, QRectF(10, 10, 100, 40), {kNoLetter, Face::Plain}, Qt::black);
    painter.end();
    EXPECT_EQ(image.pixelColor(60, 30), QColor(Qt::white));
    int inked = 0;
    for (int x = 0; x < image.width(); ++x)
        inked += image.pixelColor(x, 10) != QColor(Qt::white) ? 1 : 0;
    EXPECT_GT(inked, 20);
}

TEST(WordingOutline, DecalIsShapedByItsKeptOutline) {
    Decal decal;
    decal.width = Millimetres{100};
    decal.height = Millimetres{50};
    decal.content = Wording{"Juno", Face::Plain, "M0 0L2 0L2 1L0 1"};
    DecalShapes shapes;
    EXPECT_EQ(shapes.of(decal).boundingRect(), QRectF(0, 0, 100, 50));
    EXPECT_EQ(shapes.of(decal).elementCount(), 4);
    decal.content = Wording{"Juno", Face::Plain};
    EXPECT_GT(shapes.of(decal).elementCount(), 20) << "the same words without it are another shape";
}

} // namespace
} // namespace holdfast::app::test

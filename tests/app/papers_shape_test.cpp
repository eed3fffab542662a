// SPDX-License-Identifier: GPL-3.0-or-later
// How large papers are, what they are drawn with, whose they are, and their codes; read back with pdfinfo
// (poppler), zbarimg (zbar, a reader of ISO/IEC 18004 codes) and QtSvg.

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/papers/code_square.h"
#include "app/papers/paper_files.h"
#include "core/trade/paper_code.h"
#include "tests/app/papers_fixture.h"

#include <QFile>
#include <QRegularExpression>

#include <filesystem>

namespace holdfast::app::test {
namespace {

using PapersShape = PapersFixture;

// ── sizes ─────────────────────────────────────────────────────────────────────────────────────────────

TEST_F(PapersShape, AreOfTheirSizesInMillimetres) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    const GarmentId garment = garmentsOf(order).front();
    const auto sizeOf = [&](const Paper& paper) {
        const auto pages = pagesOf(pdfOf({paper}));
        EXPECT_EQ(pages.size(), 1U) << paper.name.toStdString();
        return pages.empty() ? QSizeF() : pages.front();
    };
    EXPECT_TRUE(isOfSize(sizeOf(claimTicket(shop(), order)), 148, 74));
    EXPECT_TRUE(isOfSize(sizeOf(careCardPaper(shop(), garment)), 105, 148)); // ISO 216: A6
    EXPECT_TRUE(isOfSize(sizeOf(bagTag(shop(), garment)), 70, 65));
    EXPECT_TRUE(isOfSize(sizeOf(labelOfRoll(shop(), usual.roll)), 70, 40));
    EXPECT_TRUE(
        isOfSize(sizeOf(daySheet(shop()).front()), 210, 279)); // ISO 216: A4 is as wide, ANSI Letter as high
}

TEST_F(PapersShape, OfMixedSizesKeepTheirOwnInOnePdf) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    const auto pages = pagesOf(pdfOf({claimTicket(shop(), order), labelOfRoll(shop(), usual.roll)}));
    ASSERT_EQ(pages.size(), 2U);
    EXPECT_TRUE(isOfSize(pages[0], 148, 74));
    EXPECT_TRUE(isOfSize(pages[1], 70, 40));
}

TEST_F(PapersShape, AsDrawingsAreInMillimetresBlackOnWhiteAndNeedNoFont) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    static const QRegularExpression colour(QStringLiteral("#[0-9a-fA-F]{6}"));
    for (const Paper& paper : allOf(order, usual.roll)) {
        SCOPED_TRACE(paper.name.toStdString());
        const QString svg = QString::fromStdString(paperSvg(paper));
        EXPECT_TRUE(svg.contains(QStringLiteral("width=\"%1mm\"").arg(paper.size.width())));
        EXPECT_TRUE(svg.contains(QStringLiteral("height=\"%1mm\"").arg(paper.size.height())));
        EXPECT_FALSE(svg.contains(QStringLiteral("<text")));
        EXPECT_FALSE(svg.contains(QStringLiteral("<image")));
        // The only dashes on paper are where it tears, and those are drawn one by one.
        EXPECT_FALSE(svg.contains(QStringLiteral("stroke-dasharray")));
        for (auto found = colour.globalMatch(svg); found.hasNext();) {
            const QString each = found.next().captured().toLower();
            EXPECT_TRUE(each == QStringLiteral("#000000") || each == QStringLiteral("#ffffff"))
                << each.toStdString();
        }
    }
}

// ── codes ─────────────────────────────────────────────────────────────────────────────────────────────

// ISO/IEC 18004, read by zbar: what is written comes back, and is the number with its check letters alone.
TEST_F(PapersShape, CodesHoldTheNumberAndNothingElse) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder(manyGarments(usual, 2)).id;
    const auto code = [](const std::string& number, std::int64_t id) {
        return QStringList{QString::fromStdString(paperCode(number, id))};
    };
    const QStringList ofOrder = code(std::to_string(shop().facts.orders.at(order).number), order.value);
    EXPECT_EQ(codesIn(pictureOf(claimTicket(shop(), order))), ofOrder + ofOrder); // on both halves
    EXPECT_EQ(codesIn(pictureOf(labelOfRoll(shop(), usual.roll))),
              code(shop().facts.rolls.at(usual.roll).label(), usual.roll.value));
    for (const GarmentId id : garmentsOf(order)) {
        const QStringList label = code(shop().facts.labelOf(shop().facts.garments.at(id)), id.value);
        EXPECT_EQ(codesIn(pictureOf(bagTag(shop(), id))), label);
        EXPECT_EQ(codesIn(pictureOf(careCardPaper(shop(), id))), label);
    }
}

// The standard's own figures: version 1 has 21 modules a side, and three finders of 7 modules in its corners.
TEST(Codes, OfShortTextsAreVersionOneWithItsFinders) {
    const CodeSquare code = codeSquareOf("418-b");
    ASSERT_EQ(code.side, 21);
    for (const auto& [left, top] : {std::pair{0, 0}, std::pair{14, 0}, std::pair{0, 14}})
        for (int y = 0; y < 7; ++y)
            for (int x = 0; x < 7; ++x) {
                const int ring = std::max(std::abs(x - 3), std::abs(y - 3));
                EXPECT_EQ(code.isDark(left + x, top + y), ring != 2) << x << ' ' << y;
            }
    // Timing pattern: row 6, dark and light in turn.
    for (int x = 8; x < 13; ++x)
        EXPECT_EQ(code.isDark(x, 6), x % 2 == 0);
}

TEST(Codes, KeepTheirQuietZone) {
    const QRectF dark = codeOutline(codeSquareOf("418-b"), 29).boundingRect();
    EXPECT_EQ(dark, QRectF(4, 4, 21, 21)); // four modules of white all round
}

// ── whose they are ────────────────────────────────────────────────────────────────────────────────────

// They bear names and telephone numbers.
TEST_F(PapersShape, AreTheOwnersAloneEvenOverAFileThatEverybodyCouldRead) {
    const QString path = fileIn(QStringLiteral("sheet.pdf"));
    ASSERT_TRUE(writeText(path, "an older one").ok());
    ASSERT_TRUE(QFile::setPermissions(path, QFileDevice::ReadOwner | QFileDevice::WriteOwner |
                                                QFileDevice::ReadOther));
    stockUsualShop();
    ASSERT_TRUE(writePapers(path, QStringLiteral("Papers"), daySheet(shop()), {}).ok());
    EXPECT_EQ(std::filesystem::status(path.toStdString()).permissions(),
              std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
}

TEST_F(PapersShape, AreNotWrittenThroughALink) {
    const QString other = fileIn(QStringLiteral("other.txt"));
    const QString link = fileIn(QStringLiteral("sheet.svg"));
    ASSERT_TRUE(writeText(other, "precious").ok());
    ASSERT_TRUE(QFile::link(other, link));
    const auto written = writeText(link, "paper");
    ASSERT_FALSE(written.ok());
    EXPECT_TRUE(
        words(written.error().message.english()).contains(QStringLiteral("is a link to another file")));
    QFile kept(other);
    ASSERT_TRUE(kept.open(QIODevice::ReadOnly));
    EXPECT_EQ(kept.readAll(), QByteArray("precious"));
}

} // namespace
} // namespace holdfast::app::test

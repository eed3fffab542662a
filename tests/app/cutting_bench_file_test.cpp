// SPDX-License-Identifier: GPL-3.0-or-later
// The cut file, read back with a general SVG renderer (QSvgRenderer, which knows nothing of it),
// and the bench on paper.
#include "app/places/cutting_bench/cut_file.h"
#include "app/places/cutting_bench/cut_sheet.h"
#include "app/theme/cut_outlines.h"
#include "app/theme/drawings.h"
#include "app/theme/wording_outline.h"
#include "db/actions/film_actions.h"
#include "db/demo/demo_shop.h"
#include "db/tables/facts.h"
#include "tests/app/cutting_bench_fixture.h"

#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QLineEdit>
#include <QPainter>
#include <QPdfWriter>
#include <QSvgRenderer>

#include <cmath>

namespace holdfast::app::test {

namespace {

// SVG Tiny 1.2, which QtSvg follows, leaves the size of a pixel to the renderer: QtSvg takes 90 to the inch.
constexpr double kPixelsPerMillimetre = 90 / 25.4;

class CutSheetFile : public CuttingBenchFixture {
protected:
    QString fileIn(const QString& name) { return m_files.filePath(name); }
    QByteArray read(const QString& path) {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }

private:
    QTemporaryDir m_files;
};

QString idOf(DecalId decal) {
    return QStringLiteral("decal-%1").arg(decal.value);
}

// How the outlines of one decal are filled by the renderer, where they lie on the sheet.
QImage filled(const QByteArray& sheet, DecalId decal, const QRectF& box, int pixels) {
    QByteArray solid = sheet;
    solid.replace("fill=\"none\"", "fill=\"#000000\" fill-rule=\"evenodd\"");
    QSvgRenderer renderer(solid);
    const double scale = pixels / std::max(box.width(), box.height());
    QImage image(static_cast<int>(std::lround(box.width() * scale)),
                 static_cast<int>(std::lround(box.height() * scale)), QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    renderer.render(&painter, idOf(decal), QRectF(QPointF(0, 0), QSizeF(image.size())));
    return image;
}

// Share of the pixels that are dark in one and light in the other.
double difference(const QImage& one, const QImage& other) {
    if (one.size() != other.size())
        return 1;
    int differ = 0;
    for (int y = 0; y < one.height(); ++y)
        for (int x = 0; x < one.width(); ++x)
            differ += (qGray(one.pixel(x, y)) < 128) != (qGray(other.pixel(x, y)) < 128) ? 1 : 0;
    return static_cast<double>(differ) / (static_cast<double>(one.width()) * one.height());
}

// As the fair table draws it, on white.
QImage asWorn(const QString& artwork, QSize size) {
    QImage image(size, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintDecal(painter, QRectF(QPointF(0, 0), QSizeF(size)), artwork, Qt::black);
    return image;
}

QRectF areaOf(const FilmArea& area) {
    return {static_cast<double>(area.along.value), static_cast<double>(area.across.value),
            static_cast<double>(area.alongSize.value), static_cast<double>(area.acrossSize.value)};
}

const Decal& decalIn(const ReckonedShop& shop, DecalId id) {
    for (const Garment& garment : shop.facts.garments)
        for (const Decal& decal : garment.decals)
            if (decal.id == id)
                return decal;
    stopBecause("no such decal");
}

// Words whose letters have another shape than the size they were given stand in its middle, as they are
// shown.
QRectF inkIn(const QRectF& lies, const Decal& decal, bool isTurned) {
    const auto* wording = std::get_if<Wording>(&decal.content);
    if (!wording)
        return lies;
    const double aspect = wordingAspect(*wording);
    QSizeF ink(static_cast<double>(decal.width.value), static_cast<double>(decal.height.value));
    const double given = ink.width() / ink.height();
    if (std::max(given / aspect, aspect / given) <= 1.03)
        return lies;
    if (given > aspect)
        ink.setWidth(ink.height() * aspect);
    else
        ink.setHeight(ink.width() / aspect);
    if (!isTurned)
        ink.transpose();
    return {lies.center() - QPointF(ink.width() / 2, ink.height() / 2), ink};
}

void expectSheetOf(const ReckonedShop& shop, const Nest& nest, const QByteArray& sheet) {
    QSvgRenderer renderer(sheet);
    ASSERT_TRUE(renderer.isValid());
    const QSizeF millimetres(static_cast<double>(nest.length.value),
                             static_cast<double>(nest.rollWidth.value));
    EXPECT_EQ(renderer.viewBoxF(), QRectF(QPointF(0, 0), millimetres));
    EXPECT_NEAR(renderer.defaultSize().width(), millimetres.width() * kPixelsPerMillimetre, 1);
    EXPECT_NEAR(renderer.defaultSize().height(), millimetres.height() * kPixelsPerMillimetre, 1);
    for (const char* layer : {"cut-lines", "weeding-frames", "parting-cut"})
        EXPECT_TRUE(renderer.elementExists(QLatin1String(layer))) << layer;
    EXPECT_EQ(sheet.count("id=\"decal-"), static_cast<qsizetype>(nest.decals.size()));
    for (const NestedDecal& decal : nest.decals) {
        ASSERT_TRUE(renderer.elementExists(idOf(decal.decal)));
        const QRectF lies = renderer.boundsOnElement(idOf(decal.decal));
        const QRectF wanted = inkIn(areaOf(decal.lies), decalIn(shop, decal.decal), decal.isTurned);
        EXPECT_NEAR(lies.width(), wanted.width(), 0.2) << decal.decal.value;
        EXPECT_NEAR(lies.height(), wanted.height(), 0.2) << decal.decal.value;
        EXPECT_NEAR(lies.left(), wanted.left(), 0.2) << decal.decal.value;
        EXPECT_NEAR(lies.top(), wanted.top(), 0.2) << decal.decal.value;
    }
}

} // namespace

TEST(CutOutlines, AreTheDrawingsThatAreShown) {
    for (const QString& artwork : artworks()) {
        const QPainterPath outline = artworkOutline(artwork);
        ASSERT_FALSE(outline.isEmpty()) << artwork.toStdString();
        const double aspect = artworkAspect(artwork);
        const QSize size(static_cast<int>(std::lround(400 * std::min(1.0, aspect))),
                         static_cast<int>(std::lround(400 * std::min(1.0, 1 / aspect))));
        QImage cut(size, QImage::Format_ARGB32_Premultiplied);
        cut.fill(Qt::white);
        QPainter painter(&cut);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.fillPath(laidInto(outline, size.width(), size.height()), Qt::black);
        painter.end();
        // The painted picture finds its edges in a proof of 200 pixels, which misses the tip of a beak.
        EXPECT_LT(difference(cut, asWorn(artwork, size)), 0.03) << artwork.toStdString();
    }
    EXPECT_TRUE(artworkOutline(QStringLiteral("no such drawing")).isEmpty());
}

TEST(CutOutlines, LieInTheirBoxToTheMillimetre) {
    const QRectF ink(3, 5, 40, 20);
    QPainterPath outline;
    outline.addRect(ink);
    EXPECT_EQ(laidInto(outline, 100, 50).boundingRect(), QRectF(0, 0, 100, 50));
    // Rounding to whole millimetres is drawn out; another shape than the box's is not.
    EXPECT_EQ(laidInto(outline, 100, 51).boundingRect(), QRectF(0, 0, 100, 51));
    EXPECT_EQ(laidInto(outline, 100, 80).boundingRect(), QRectF(0, 15, 100, 50));
    EXPECT_TRUE(laidInto({}, 100, 50).isEmpty());
    EXPECT_TRUE(letteringOutline(QStringLiteral(" "), QStringLiteral("sans")).isEmpty());
}

TEST_F(CutSheetFile, OfTheDemoHasItsSizesInMillimetres) {
    const std::filesystem::path demo = fileIn(QStringLiteral("demo.holdfast")).toStdString();
    const LocalDate on = localDate(2026, 11, 25);
    valueOf(db::makeDemoShop(demo, on));
    const Now then = db::demoNow(on);
    const auto shop = valueOf(db::Shop::openReadOnly(demo, [then] { return then.instant; }));
    ClimateReckoner reckoner;
    const auto reckoned =
        reckonShop(db::loadOpenFacts(shop->connection()), db::loadClimate(shop->connection()),
                   db::loadRecentUse(shop->connection(), then.instant), reckoner, then);
    std::size_t decals = 0;
    for (const FilmToCut& film : filmsToCut(*reckoned)) {
        const auto nests = nestFilm(*reckoned, film, usualWish(*reckoned, film));
        if (!nests.ok())
            continue;
        for (const Nest& nest : nests->nests) {
            const auto sheet = cutFileOf(*reckoned, nest, {});
            ASSERT_TRUE(sheet.ok()) << sheet.error().message.english();
            expectSheetOf(*reckoned, nest, QByteArray::fromStdString(*sheet));
            decals += nest.decals.size();
        }
    }
    EXPECT_GT(decals, 5U);
}

TEST_F(CutSheetFile, IsMirrored) {
    const UsualShop usual = stockUsualShop();
    // The tern flies to one side: its mirror image is another picture. One lies each way round.
    const double aspect = artworkAspect(QStringLiteral("tern"));
    for (const Millimetres width : {300_mm, 450_mm}) {
        const Millimetres height{std::lround(static_cast<double>(width.value) / aspect)};
        takeOrder({withDecal(usual, width, height, Artwork{"tern"})});
    }
    open();
    waitForSearch();
    ASSERT_EQ(nest().decals.size(), 2U);
    const QByteArray mirrored =
        QByteArray::fromStdString(valueOf(cutFileOf(*desk().shop(), nest(), {.title = {}})));
    for (const NestedDecal& decal : nest().decals) {
        const QImage seen = filled(mirrored, decal.decal, areaOf(decal.lies), 400);
        // Turned, its width lies along the sheet's x; else along its y. Seen from the other side and turned
        // upright it is the drawing as it is worn: a picture drawn another way.
        const QImage flipped = seen.mirrored(decal.isTurned, !decal.isTurned);
        QTransform upright;
        upright.rotate(decal.isTurned ? 0 : 90);
        const QImage worn = flipped.transformed(upright);
        EXPECT_LT(difference(worn, asWorn(QStringLiteral("tern"), worn.size())), 0.03) << decal.isTurned;
        const QImage asItLies = seen.transformed(upright);
        EXPECT_GT(difference(asItLies, asWorn(QStringLiteral("tern"), asItLies.size())), 0.1)
            << decal.isTurned;
    }
}

TEST_F(CutSheetFile, IsSavedWhereItIsAskedFor) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    open();
    key(Qt::Key_S, Qt::ControlModifier);
    auto* dialog = part<QFileDialog>(QStringLiteral("cutFileDialog"));
    ASSERT_TRUE(dialog->isVisible());
    EXPECT_EQ(QFileInfo(dialog->selectedFiles().value(0)).fileName().toStdString(),
              "R-01 Dusk 2026-11-25.svg");
    const QString path = fileIn(QStringLiteral("dusk.svg"));
    dialog->selectFile(path);
    dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"))->setText(path);
    QMetaObject::invokeMethod(dialog, "accept");
    waitForWriting();
    const QByteArray sheet = read(path);
    EXPECT_EQ(sheet.count("id=\"decal-"), 2);
    EXPECT_TRUE(sheet.contains("R-01"));
    EXPECT_EQ(said.toStdString(), "Saved dusk.svg.");
    EXPECT_EQ(refused.toStdString(), "");
}

TEST_F(CutSheetFile, OfTwoRollsIsTwoFiles) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(usual.film, usual.place);
    valueOf(db::correctLength(file(), usual.roll, 300_mm, "measured anew"));
    takeOrder({aGarment(usual), aGarment(usual), aGarment(usual)});
    open();
    cutFirstFrom(usual.roll);
    ASSERT_EQ(model().nests().size(), 2U);
    place->saveCutFiles(fileIn(QStringLiteral("dusk.svg")));
    waitForWriting();
    EXPECT_EQ(read(fileIn(QStringLiteral("dusk.svg"))).count("id=\"decal-"), 2);
    EXPECT_EQ(read(fileIn(QStringLiteral("dusk R-02.svg"))).count("id=\"decal-"), 1);
}

TEST_F(CutSheetFile, SaysWhyItCouldNotBeWritten) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    open();
    const CutToWrite bench{model().shop(), model().nests(), {}};
    const auto always = [](double) { return true; };
    const auto nowhere = writeCutFiles(bench, QStringLiteral("/no/such/folder/dusk.svg"), always);
    ASSERT_FALSE(nowhere.ok());
    EXPECT_EQ(nowhere.error().field, "file");
    EXPECT_NE(nowhere.error().message.english().find("/no/such/folder/dusk.svg"), std::string::npos);
    // A folder in the place of the sheet's file.
    QDir().mkpath(fileIn(QStringLiteral("Cut sheet R-01.pdf/full")));
    place->printCutSheets(fileIn({}));
    waitForWriting();
    EXPECT_TRUE(refused.contains(QStringLiteral("Cut sheet R-01.pdf"))) << refused.toStdString();
}

TEST_F(CutSheetFile, NamesADecalThatHasNoDrawing) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 100_mm, 100_mm, Artwork{"kraken"})});
    open();
    place->saveCutFiles(fileIn(QStringLiteral("none.svg")));
    waitForWriting();
    EXPECT_TRUE(refused.contains(QStringLiteral("Kraken"))) << refused.toStdString();
    EXPECT_FALSE(QFileInfo::exists(fileIn(QStringLiteral("none.svg"))));
}

TEST_F(CutSheetFile, CutSheetIsPaperWithEveryDecalOnIt) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    open();
    place->printCutSheets(fileIn({}));
    waitForWriting();
    const QByteArray paper = read(fileIn(QStringLiteral("Cut sheet R-01.pdf")));
    EXPECT_TRUE(paper.startsWith("%PDF"));
    EXPECT_GT(paper.size(), 4000);
}

TEST_F(CutSheetFile, StoppedLeavesWhatWasThere) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    open();
    const CutToWrite bench{model().shop(), model().nests(), {}};
    for (const char* name : {"kept.svg", "Cut sheet R-01.pdf"}) {
        const QString path = fileIn(QLatin1String(name));
        QFile before(path);
        ASSERT_TRUE(before.open(QIODevice::WriteOnly));
        before.write("what was there");
        before.close();
        int shares = 0;
        const auto notTwice = [&](double) { return ++shares < 2; };
        const bool isPaper = path.endsWith(QStringLiteral("pdf"));
        const std::string told = valueOf(isPaper ? printCutSheet(bench, {{}, {}, fileIn({})}, notTwice)
                                                 : writeCutFiles(bench, path, notTwice));
        EXPECT_EQ(told, "Stopped; nothing was written.") << name;
        EXPECT_EQ(shares, 2) << name;
        EXPECT_EQ(read(path).toStdString(), "what was there") << name;
    }
}

TEST_F(CutSheetFile, OfAThousandDecalsIsWrittenBesideTheWindowAndEscapeStopsIt) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(usual.film, usual.place, 60'000_mm);
    for (int order = 0; order < 20; ++order) {
        std::vector<GarmentDraft> garments;
        for (int at = 0; at < 50; ++at)
            garments.push_back(withDecal(usual, {60 + at}, {70 + order}));
        takeOrder(garments);
    }
    open();
    place->printCutSheets(fileIn({}));
    ASSERT_TRUE(place->isWriting());
    EXPECT_TRUE(tools()->showsWriting());
    EXPECT_FALSE(place->isSearching()) << "what is written stays what lies there";
    EXPECT_TRUE(button("endWork")->isVisible());
    key(Qt::Key_Escape);
    waitForWriting();
    EXPECT_EQ(said.toStdString(), "Stopped; nothing was written.");
    EXPECT_TRUE(QDir(fileIn({})).entryList({QStringLiteral("*.pdf")}).isEmpty());
    EXPECT_FALSE(tools()->showsWriting());
    EXPECT_TRUE(button("nestAgain")->isVisible());
    // Left alone it gets there, while the bench goes on being worked at.
    const QString path = fileIn(QStringLiteral("dusk.svg"));
    place->saveCutFiles(path);
    key(Qt::Key_Tab);
    waitForWriting();
    EXPECT_EQ(said.toStdString(), "Saved dusk.svg.");
    EXPECT_EQ(static_cast<std::size_t>(read(path).count("id=\"decal-")), nest().decals.size());
}

TEST(CutOutlines, LettersKeepTheirCurvesAndAreTheLettersThatAreShown) {
    for (const char* face : {"sans", "serif"}) {
        const QString text = QStringLiteral("Bräg 8&Q%");
        const QPainterPath outline = letteringOutline(text, QLatin1String(face));
        int curves = 0;
        for (int at = 0; at < outline.elementCount(); ++at)
            curves += outline.elementAt(at).type == QPainterPath::CurveToElement ? 1 : 0;
        EXPECT_GT(curves, 40) << face;
        EXPECT_LT(outline.elementCount(), 1500) << face;
        const double aspect = outline.boundingRect().width() / outline.boundingRect().height();
        const QSize size(600, static_cast<int>(std::lround(600 / aspect)));
        QImage cut(size, QImage::Format_ARGB32_Premultiplied);
        cut.fill(Qt::white);
        QImage shown = cut;
        QPainter painter(&cut);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.fillPath(laidInto(outline, size.width(), size.height()), Qt::black);
        painter.end();
        QPainter other(&shown);
        QPainterPath letters;
        letters.addText(QPointF(0, 0), letteringFont(QLatin1String(face)), text);
        paintLettering(other, QRectF(QPointF(0, 0), QSizeF(size)), letters, Qt::black);
        other.end();
        EXPECT_LT(difference(cut, shown), 0.01) << face;
    }
}

TEST_F(CutSheetFile, PaperScaleTakesTheWholeLengthInStrips) {
    Nest nest;
    nest.rollWidth = 500_mm;
    nest.length = 288_mm;
    const CutSheetScale one = paperScaleOf(nest, 177);
    EXPECT_EQ(one.scale, 3); // 500 mm across take 167 mm of paper
    ASSERT_EQ(one.strips.size(), 1U);
    nest.length = 9000_mm;
    const CutSheetScale many = paperScaleOf(nest, 177);
    Millimetres at;
    for (const FilmStrip& strip : many.strips) {
        EXPECT_EQ(strip.from, at);
        EXPECT_LE(static_cast<double>((strip.to - strip.from).value) / many.scale, 177);
        at = strip.to;
    }
    EXPECT_EQ(at, nest.length);
}

} // namespace holdfast::app::test

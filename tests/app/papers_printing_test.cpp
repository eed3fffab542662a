// SPDX-License-Identifier: GPL-3.0-or-later
// Papers on the sheets of a printer, as files, and from the command line; read back with poppler and zbar.

#include "app/papers/paper_printing.h"
#include "app/papers/paper_sheets.h"
#include "tests/app/papers_fixture.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace holdfast::app::test {
namespace {

constexpr QSizeF kA4{210, 297};

class PapersPrinting : public PapersFixture {
protected:
    static PaperErrand errandOf(const QString& title, const std::vector<Paper>& papers) {
        return {title, [papers] { return papers; }};
    }
    std::vector<Paper> tickets(int count) {
        const auto usual = stockUsualShop();
        std::vector<Paper> papers;
        for (int at = 0; at < count; ++at)
            papers.push_back(claimTicket(*desk().shop(), takeOrder({aGarment(usual)}).id));
        return papers;
    }
};

TEST_F(PapersPrinting, SmallPapersShareTheSheetAndAllTheirCodesAreRead) {
    const auto sheets = laidOnSheets(tickets(4), kA4);
    ASSERT_EQ(sheets.size(), 2U);                       // three of 148 × 74 mm fit on A4
    EXPECT_EQ(codesIn(pictureOf(sheets[0])).size(), 6); // two on each
    EXPECT_EQ(codesIn(pictureOf(sheets[1])).size(), 2);
    EXPECT_TRUE(staysOnPaper(sheets[0]));
}

TEST_F(PapersPrinting, PapersAreTurnedWhereMoreFitSo) {
    // Two of 105 × 148 mm side by side need 230 mm with their margins: turned, two fit below each other.
    const Paper card{
        QStringLiteral("card"), {105, 148}, [](PaperInk& ink) { ink.frame({0.5, 0.5, 104, 147}); }};
    const auto sheets = laidOnSheets({card, card}, kA4);
    ASSERT_EQ(sheets.size(), 1U);
    EXPECT_TRUE(staysOnPaper(sheets[0]));
    // The turned frame's ink: from the margin of 8 mm, 148 mm wide.
    const QImage picture = pictureOf(sheets[0], 254);
    EXPECT_EQ(picture.pixel(85, 600) & 0xff, 0U);
    EXPECT_EQ(picture.pixel(1555, 600) & 0xff, 0U);
}

TEST_F(PapersPrinting, ALargePaperGoesAloneAndAtItsSize) {
    const auto usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    const auto day = daySheet(*desk().shop());
    EXPECT_EQ(laidOnSheets(day, kA4).size(), day.size());
    EXPECT_DOUBLE_EQ(scaleOn(kA4, day.front().size), 1);
    EXPECT_DOUBLE_EQ(scaleOn({215.9, 279.4}, day.front().size), 1); // ANSI Letter, lower than A4
    const auto letters = laidOnSheets(day, {215.9, 279.4});
    ASSERT_EQ(letters.size(), day.size());
    EXPECT_TRUE(staysOnPaper(letters.front()));
}

TEST_F(PapersPrinting, OnALabelEachPaperGoesAloneTurnedWhereItIsLargerSo) {
    const Paper label{QStringLiteral("label"), {70, 40}, [](PaperInk& ink) { ink.frame({1, 1, 68, 38}); }};
    EXPECT_EQ(laidOnSheets({label, label}, {80, 200}).size(), 2U);
    EXPECT_DOUBLE_EQ(scaleOn({62, 100}, label.size), 1);
    EXPECT_NEAR(scaleOn({62, 29}, label.size), 0.725, 0.001);
    // Printers give their pages in whole points: 69.85 mm is meant to be 70.
    EXPECT_DOUBLE_EQ(scaleOn({69.85, 39.9}, label.size), 1);
    const auto turned = laidOnSheets({label}, {62, 100});
    ASSERT_EQ(turned.size(), 1U);
    // In the middle of the page, its long side down: the frame's ink at 12 and 16 mm.
    const QImage picture = pictureOf(turned.front(), 254);
    EXPECT_EQ(qGray(picture.pixel(120, 500)), 0);
    EXPECT_EQ(qGray(picture.pixel(310, 160)), 0);
    EXPECT_EQ(qGray(picture.pixel(310, 155)), 255);
}

TEST_F(PapersPrinting, WithoutAPrinterAPdfIsSavedAndReplaced) {
    const PaperErrand errand = errandOf(QStringLiteral("Claim ticket 1"), tickets(1));
    const QString folder = fileIn(QStringLiteral("not/there/yet"));
    for (int time = 0; time < 2; ++time) {
        const auto told = printPapers(errand, {{}, {}, folder}, {});
        ASSERT_TRUE(told.ok()) << told.error().message.english();
        EXPECT_EQ(*told, "No printer is set up on this computer. Saved as " + folder.toStdString() +
                             "/Claim ticket 1.pdf.");
    }
    EXPECT_EQ(QDir(folder).entryList(QDir::Files), QStringList{QStringLiteral("Claim ticket 1.pdf")});
    EXPECT_EQ(pagesOf(folder + QStringLiteral("/Claim ticket 1.pdf")).size(), 1U);
}

TEST_F(PapersPrinting, WhatIsStoppedLeavesTheFileThatWasThere) {
    const std::vector<Paper> three = tickets(3);
    const PaperErrand errand = errandOf(QStringLiteral("Tickets"), three);
    const QString folder = fileIn(QStringLiteral("kept"));
    ASSERT_TRUE(printPapers(errandOf(errand.title, {three.front()}), {{}, {}, folder}, {}).ok());
    const auto told = printPapers(errand, {{}, {}, folder}, [](double) { return false; });
    ASSERT_TRUE(told.ok());
    EXPECT_EQ(*told, "Stopped; nothing was written.");
    EXPECT_EQ(pagesOf(folder + QStringLiteral("/Tickets.pdf")).size(), 1U);
}

TEST_F(PapersPrinting, AFolderThatCannotBeMadeIsNamed) {
    QFile file(fileIn(QStringLiteral("file")));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    const auto told = printPapers(errandOf(QStringLiteral("T"), tickets(1)),
                                  {{}, {}, file.fileName() + QStringLiteral("/in it")}, {});
    ASSERT_FALSE(told.ok());
    EXPECT_TRUE(told.error().message.english().find("/in it") != std::string::npos);
}

// ── papers DIR ────────────────────────────────────────────────────────────────────────────────────────

class PapersVerb : public PapersFixture {
protected:
    struct Ended {
        int status = 0;
        QString out;
        QString error;
    };
    Ended run(const QString& folder) {
        QProcess program;
        program.start(QStringLiteral(HOLDFAST_PROGRAM),
                      {QStringLiteral("--shop"), QString::fromStdString(path().string()),
                       QStringLiteral("--on"), QStringLiteral("2026-11-25"), QStringLiteral("papers"),
                       folder});
        EXPECT_TRUE(program.waitForFinished(120'000));
        return {program.exitCode(), QString::fromUtf8(program.readAllStandardOutput()),
                QString::fromUtf8(program.readAllStandardError())};
    }
    QStringList filesIn(const QString& folder) { return QDir(folder).entryList(QDir::Files, QDir::Name); }
};

TEST_F(PapersVerb, WritesEveryFamilyAndEveryPaper) {
    const auto usual = stockUsualShop();
    const auto pressed = takeOrder({aGarment(usual)});
    const GarmentId garment = garmentsOf(pressed.id).front();
    cut(garment, usual.roll);
    press(garment);
    const auto waiting = takeOrder({aGarment(usual), aGarment(usual)});
    const QString folder = fileIn(QStringLiteral("new/papers"));
    const Ended ended = run(folder);
    ASSERT_EQ(ended.status, 0) << ended.error.toStdString();
    EXPECT_EQ(
        ended.out.toStdString(),
        "Wrote into " + folder.toStdString() +
            ": 1 page of day sheet, 2 claim tickets, 1 care card, 3 bag tags, 1 roll label, 1 cut file\n");
    const QString roll = QString::fromStdString(desk().shop()->facts.rolls.at(usual.roll).label());
    QStringList expected{QStringLiteral("day-sheet.pdf"),     QStringLiteral("day-sheet-1.svg"),
                         QStringLiteral("claim-tickets.pdf"), QStringLiteral("bag-tags.pdf"),
                         QStringLiteral("care-cards.pdf"),    QStringLiteral("roll-labels.pdf"),
                         QStringLiteral("cut-sheets.pdf")};
    for (const auto& order : {pressed, waiting})
        expected << QStringLiteral("claim-ticket-%1.svg").arg(order.number);
    expected << QStringLiteral("care-card-%1-a.svg").arg(pressed.number)
             << QStringLiteral("bag-tag-%1-a.svg").arg(pressed.number)
             << QStringLiteral("bag-tag-%1-a.svg").arg(waiting.number)
             << QStringLiteral("bag-tag-%1-b.svg").arg(waiting.number)
             << QStringLiteral("roll-label-%1.svg").arg(roll) << QStringLiteral("cut-file-%1.svg").arg(roll);
    expected.sort();
    EXPECT_EQ(filesIn(folder).join(u'\n').toStdString(), expected.join(u'\n').toStdString());
    EXPECT_EQ(pagesOf(folder + QStringLiteral("/claim-tickets.pdf")).size(), 2U);
    EXPECT_EQ(pagesOf(folder + QStringLiteral("/bag-tags.pdf")).size(), 3U);
    // The same names are written again, nothing beside them.
    EXPECT_EQ(run(folder).status, 0);
    EXPECT_EQ(filesIn(folder).size(), expected.size());
}

TEST_F(PapersVerb, OfAnEmptyShopIsADaySheet) {
    close();
    const QString folder = fileIn(QStringLiteral("papers"));
    const Ended ended = run(folder);
    ASSERT_EQ(ended.status, 0) << ended.error.toStdString();
    EXPECT_EQ(filesIn(folder),
              (QStringList{QStringLiteral("day-sheet-1.svg"), QStringLiteral("day-sheet.pdf")}));
}

TEST_F(PapersVerb, LeavesWhatIsNoneOfItsFiles) {
    const QString folder = fileIn(QStringLiteral("papers"));
    QDir().mkpath(folder + QStringLiteral("/day-sheet.pdf"));
    QFile other(folder + QStringLiteral("/shopping.txt"));
    ASSERT_TRUE(other.open(QIODevice::WriteOnly) && other.write("film") == 4);
    other.close();
    const Ended ended = run(folder);
    EXPECT_EQ(ended.status, 1);
    EXPECT_EQ(ended.error.count(u'\n'), 1) << ended.error.toStdString();
    EXPECT_TRUE(ended.error.contains(QStringLiteral("day-sheet.pdf")));
    EXPECT_TRUE(QFileInfo(folder + QStringLiteral("/day-sheet.pdf")).isDir());
    EXPECT_EQ(other.size(), 4);
}

TEST_F(PapersVerb, IntoWhatIsNoFolderFailsInOneLine) {
    QFile file(fileIn(QStringLiteral("file")));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    const Ended ended = run(file.fileName() + QStringLiteral("/papers"));
    EXPECT_EQ(ended.status, 1);
    EXPECT_EQ(ended.error.count(u'\n'), 1) << ended.error.toStdString();
}

} // namespace
} // namespace holdfast::app::test

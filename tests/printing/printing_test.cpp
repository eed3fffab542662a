// SPDX-License-Identifier: GPL-3.0-or-later
// What really arrives: every small paper on every queue, at its size; and what is said of a printer that
// cannot print.

#include "tests/printing/printing_fixture.h"

#include <array>
#include <iostream>

namespace holdfast::app::test {
namespace {

// How a paper is expected on a page; the shares are those of the smaller side, by hand.
struct Expected {
    const char* queue;
    double scale; // 0: too small to be read there
    bool isTurned = false;
};

class PrintingSizes : public PrintingFixture {
protected:
    void SetUp() override {
        PrintingFixture::SetUp();
        const auto usual = stockUsualShop();
        m_order = takeOrder({aGarment(usual)}).id;
        m_roll = usual.roll;
    }
    Paper label() { return labelOfRoll(shop(), m_roll); }
    Paper tag() { return bagTag(shop(), garmentsOf(m_order).front()); }
    Paper ticket() { return claimTicket(shop(), m_order); }

    void comesOut(const Paper& paper, const Expected& expected, int codes) {
        const QString queue = QLatin1String(expected.queue);
        SCOPED_TRACE((paper.name + QStringLiteral(" on ") + queue).toStdString());
        const PaperErrand errand{paper.name, [paper] { return std::vector{paper}; }};
        const std::string told = print(errand, bothOn(queue));
        if (expected.scale == 0) {
            EXPECT_NE(told.find("is too small for it. Saved as"), std::string::npos) << told;
            EXPECT_EQ(savedFiles(), QStringList{paper.name + QStringLiteral(".pdf")});
            EXPECT_EQ(service().waitingAt(queue), 0);
            return;
        }
        const Arrived arrived = arrivedAt(queue);
        ASSERT_TRUE(arrived.isThere()) << told;
        const auto page = std::ranges::find(kQueues, std::string_view{expected.queue}, [](const auto& each) {
                              return std::string_view{each.first};
                          })->second;
        EXPECT_NEAR(arrived.page.width(), page.width, 0.4);
        EXPECT_NEAR(arrived.page.height(), page.height, 0.4);
        QSizeF ink = drawn(paper) * expected.scale;
        if (expected.isTurned)
            ink.transpose();
        EXPECT_NEAR(arrived.ink.width(), ink.width(), 0.4);
        EXPECT_NEAR(arrived.ink.height(), ink.height(), 0.4);
        EXPECT_EQ(codesIn(arrived.picture).size(), codes);
        // Smaller than it should be is never kept quiet.
        EXPECT_EQ(told.find("of its size") != std::string::npos, expected.scale < 0.8) << told;
        std::cout << "    " << paper.name.toStdString() << " on " << expected.queue << ": page "
                  << arrived.page.width() << " x " << arrived.page.height() << ", ink " << arrived.ink.width()
                  << " x " << arrived.ink.height() << " at " << arrived.ink.x() << ", " << arrived.ink.y()
                  << ", scale " << expected.scale << (expected.isTurned ? ", turned" : "") << "\n";
    }

    OrderId m_order;
    RollId m_roll;
};

TEST_F(PrintingSizes, ALabelOf70By40IsWholeOrSaysThatItIsNot) {
    for (const Expected& each : {Expected{"Tape62x29", 0.72}, Expected{"Roll62x100", 1, true},
                                 Expected{"Label70x40", 1}, Expected{"Ticket80x200", 1}})
        comesOut(label(), each, 1);
}

TEST_F(PrintingSizes, ABagTagOf70By65IsWholeOrSaysThatItIsNot) {
    for (const Expected& each : {Expected{"Roll62x100", 0.954, true}, Expected{"Label70x40", 0.615},
                                 Expected{"Ticket80x200", 1}, Expected{"Tape62x29", 0}})
        comesOut(tag(), each, 1);
}

TEST_F(PrintingSizes, AClaimTicketOf148By74IsWholeOrSaysThatItIsNot) {
    for (const Expected& each : {Expected{"Roll62x100", 0.675, true}, Expected{"Ticket80x200", 1, true},
                                 Expected{"Tape62x29", 0}, Expected{"Label70x40", 0}})
        comesOut(ticket(), each, 2);
}

TEST_F(PrintingSizes, OnSheetsSmallPapersGoTogetherWithMarksAtTheirSize) {
    const std::vector<Paper> three{ticket(), ticket(), ticket()};
    for (const QString& queue : {QStringLiteral("OfficeA4"), QStringLiteral("OfficeLetter")}) {
        SCOPED_TRACE(queue.toStdString());
        print({QStringLiteral("Tickets"), [three] { return three; }}, bothOn(queue));
        const Arrived arrived = arrivedAt(queue);
        ASSERT_EQ(arrived.pages, 1);
        EXPECT_EQ(codesIn(arrived.picture).size(), 6);
        // From mark to mark: 148 mm across, three of 74 mm with 6 mm between them, and 2.8 mm of marks
        // outside.
        EXPECT_NEAR(arrived.ink.width(), 148 + 2 * 2.8, 0.3);
        EXPECT_NEAR(arrived.ink.height(), 3 * 74 + 2 * 6 + 2 * 2.8, 0.3);
        EXPECT_NEAR(arrived.ink.x(), 8 - 2.8, 0.3);
        std::cout << "    three tickets on " << queue.toStdString() << ": page " << arrived.page.width()
                  << " x " << arrived.page.height() << ", marks " << arrived.ink.width() << " x "
                  << arrived.ink.height() << "\n";
    }
}

TEST_F(PrintingSizes, ADaySheetIsAtItsSizeOnA4AndOnLetter) {
    const auto day = daySheet(shop());
    for (const char* queue : {"OfficeA4", "OfficeLetter"})
        comesOut(day.front(), {queue, 1.0}, 0);
}

TEST_F(PrintingSizes, ALongerPieceOfTheSameRollIsTakenWhereTheUsualIsTooSmall) {
    const QString roll = QStringLiteral("Roll");
    service().addQueue(roll, {{62, 29}, {62, 100}, {90, 100}});
    const Paper paper = label();
    const std::string told = print({paper.name, [paper] { return std::vector{paper}; }}, bothOn(roll));
    const Arrived arrived = arrivedAt(roll);
    service().removeQueue(roll);
    ASSERT_TRUE(arrived.isThere()) << told;
    EXPECT_NEAR(arrived.page.width(), 62, 0.4); // 90 mm would be another roll
    EXPECT_NEAR(arrived.page.height(), 100, 0.4);
    EXPECT_NEAR(arrived.ink.height(), drawn(paper).width(), 0.4);
}

TEST_F(PrintingSizes, ATicketThatALabelIsTooSmallForGoesToThePrinterForSheets) {
    const Paper paper = ticket();
    const std::string told = print({QStringLiteral("Claim ticket 7"), [paper] { return std::vector{paper}; }},
                                   {QStringLiteral("Tape62x29"), QStringLiteral("OfficeA4")});
    EXPECT_EQ(told, "Claim ticket 7 sent to the printer OfficeA4.");
    const Arrived arrived = arrivedAt(QStringLiteral("OfficeA4"));
    ASSERT_TRUE(arrived.isThere());
    EXPECT_NEAR(arrived.ink.width(), 148 + 2 * 2.8, 0.3);
}

// ── printers that cannot print ────────────────────────────────────────────────────────────────────────

class PrinterTrouble : public PrintingFixture {
protected:
    static PaperErrand errand() {
        return {QStringLiteral("Claim ticket 426"), [] {
                    return std::vector{Paper{
                        QStringLiteral("paper"), {60, 30}, [](PaperInk& ink) { ink.frame({2, 2, 56, 26}); }}};
                }};
    }
    std::string printOn(const QString& queue) { return print(errand(), bothOn(queue)); }
    std::string savedAs() const { return folder().toStdString() + "/Claim ticket 426.pdf."; }
    const QString m_label = QStringLiteral("Label70x40");
};

TEST_F(PrinterTrouble, WhatIsSentToAPausedPrinterWaitsThereAndIsSaidTo) {
    service().tool(QStringLiteral("cupsdisable"), {m_label});
    EXPECT_EQ(printOn(m_label), "Claim ticket 426 sent to the printer Label70x40, which is paused: nothing "
                                "is printed until it goes on.");
    EXPECT_EQ(service().waitingAt(m_label), 1);
    service().tool(QStringLiteral("cupsenable"), {m_label});
    EXPECT_TRUE(arrivedAt(m_label).isThere());
}

TEST_F(PrinterTrouble, ThatTakesNoWorkIsNamedAndThePaperIsSaved) {
    service().tool(QStringLiteral("cupsreject"), {m_label});
    EXPECT_EQ(printOn(m_label), "The printer Label70x40 takes no work at present. Saved as " + savedAs());
    EXPECT_EQ(savedFiles().size(), 1);
    service().tool(QStringLiteral("cupsaccept"), {m_label});
    EXPECT_EQ(printOn(m_label), "Claim ticket 426 sent to the printer Label70x40.");
}

TEST_F(PrinterTrouble, ThatIsGoneIsNamedWithTheWayToChooseAnother) {
    EXPECT_EQ(printOn(QStringLiteral("Loft")),
              "The printer Loft is no longer there; choose another in Back room, "
              "Printers. Saved as " +
                  savedAs());
}

TEST_F(PrinterTrouble, SeveralWithoutAChoiceAreCountedAndTheUsualOneIsTaken) {
    EXPECT_EQ(print(errand(), {}),
              "There are 6 printers and none is chosen; choose one in Back room, Printers. Saved as " +
                  savedAs());
    service().tool(QStringLiteral("lpadmin"), {QStringLiteral("-d"), QStringLiteral("OfficeA4")});
    EXPECT_EQ(print(errand(), {}), "Claim ticket 426 sent to the printer OfficeA4.");
}

TEST_F(PrinterTrouble, TheOnlyOneNeedsNoChoiceAndWithNoneAPdfIsSaved) {
    for (const QString& name : queueNames())
        if (name != m_label)
            service().removeQueue(name);
    EXPECT_EQ(print(errand(), {}), "Claim ticket 426 sent to the printer Label70x40.");
    service().removeQueue(m_label);
    EXPECT_EQ(print(errand(), {}), "No printer is set up on this computer. Saved as " + savedAs());
}

TEST_F(PrinterTrouble, StoppedBeforeItIsSentNothingIsPrinted) {
    const auto told =
        printPapers(errand(), printingHere(bothOn(m_label), folder()), [](double) { return false; });
    ASSERT_TRUE(told.ok());
    EXPECT_EQ(*told, "Stopped; nothing was printed.");
    EXPECT_EQ(service().waitingAt(m_label), 0);
}

} // namespace
} // namespace holdfast::app::test

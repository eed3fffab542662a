// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/test_paper.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct TestWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::TestPaper)
};

constexpr PaperType kTestTitle{4.6, QFont::Bold};
constexpr PaperType kTestPlain{3.2, QFont::Normal};
constexpr PaperType kTestNumber{2.8, QFont::Normal};
constexpr double kThin = 0.2;

double tickOf(int millimetre) {
    return millimetre % 10 == 0 ? 4 : millimetre % 5 == 0 ? 3 : 2;
}

// From left to right, a tick at each millimetre, a number at each ten.
void drawRuler(PaperInk& ink, QPointF from, int length) {
    ink.rule(from.x(), from.x() + length, from.y(), kThin);
    QPainterPath ticks;
    for (int at = 0; at <= length; ++at) {
        ticks.moveTo(from.x() + at, from.y());
        ticks.lineTo(from.x() + at, from.y() + tickOf(at));
        if (at % 10 == 0)
            ink.line({from.x() + at, from.y() + 7}, QString::number(at), kTestNumber, Across::Middle);
    }
    ink.stroke(ticks, {}, kThin);
}

// From the top down, its numbers at the right.
void drawUprightRuler(PaperInk& ink, QPointF from, int length) {
    QPainterPath ticks;
    ticks.moveTo(from);
    ticks.lineTo(from.x(), from.y() + length);
    for (int at = 0; at <= length; ++at) {
        ticks.moveTo(from.x(), from.y() + at);
        ticks.lineTo(from.x() + tickOf(at), from.y() + at);
        if (at % 10 == 0)
            ink.line({from.x() + 5, from.y() + at + 1}, QString::number(at), kTestNumber);
    }
    ink.stroke(ticks, {}, kThin);
}

// Of the size of a roll's label.
Paper testLabel() {
    return {QStringLiteral("test-label"), {70, 40}, [](PaperInk& ink) {
                ink.frame({2, 2, 66, 36}, kThin);
                ink.line({5, 8.6}, TestWords::tr("Test label"), kTestTitle);
                drawRuler(ink, {5, 12}, 60);
                ink.lines({5, 22}, 60,
                          TestWords::tr(
                              "The ruler is 60 mm long. If it is shorter or cut off, set the paper in the "
                              "printer’s own settings to the size of its labels."),
                          kTestPlain);
            }};
}

Paper testSheet() {
    return {QStringLiteral("test-sheet"), {180, 120}, [](PaperInk& ink) {
                ink.line({10, 10}, TestWords::tr("Test sheet"), kTestTitle);
                drawRuler(ink, {10, 14}, 160);
                drawUprightRuler(ink, {10, 26}, 90);
                ink.lines(
                    {30, 30}, 140,
                    TestWords::tr(
                        "The rulers are 160 mm and 90 mm long. The corner marks are 180 × 120 mm apart, "
                        "those at the top 8 mm from the edges of the sheet. If they are not, set the "
                        "paper in the printer’s own settings to what is in its tray."),
                    kTestPlain);
            }};
}

} // namespace

Paper testPaper(PaperUse use) {
    return use == PaperUse::Labels ? testLabel() : testSheet();
}

} // namespace holdfast::app

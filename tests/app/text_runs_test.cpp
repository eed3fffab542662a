// SPDX-License-Identifier: GPL-3.0-or-later
// Names of scripts that are read from right to left leave the figures of their line in order (UAX #9, Unicode
// Bidirectional Algorithm, isolates: sections 3.1 and 5.4).

#include "app/theme/text_runs.h"
#include "app/theme/type.h"
#include "app/widgets/label.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QTextLayout>

namespace holdfast::app {
namespace {

// Where a part of a line is drawn, from the left.
qreal leftOf(const QString& line, const QString& part) {
    QTextLayout layout(line, fontOf(Type::Body));
    layout.beginLayout();
    QTextLine laid = layout.createLine();
    laid.setLineWidth(2000);
    layout.endLayout();
    const int at = static_cast<int>(line.indexOf(part));
    EXPECT_GE(at, 0) << line.toStdString();
    return std::min(laid.cursorToX(at), laid.cursorToX(at + static_cast<int>(part.size())));
}

void expectInOrder(const QString& line, const QStringList& parts) {
    for (qsizetype at = 1; at < parts.size(); ++at)
        EXPECT_LT(leftOf(line, parts[at - 1]), leftOf(line, parts[at]))
            << line.toStdString() << ": " << parts[at - 1].toStdString() << ", " << parts[at].toStdString();
}

TEST(TextRuns, FiguresBehindANameKeepTheirOrder) {
    for (const char* name : {"\u05e1\u05dc\u05de\u05d0", "\u0633\u0644\u0645\u0649 \u0639\u0644\u064a"}) {
        const QString line = QStringLiteral("%1, 36 × 19 mm, 5 left").arg(QString::fromUtf8(name));
        expectInOrder(withRunsApart(line), {QString::fromUtf8(name).left(1), QStringLiteral("36"),
                                            QStringLiteral("19"), QStringLiteral("mm"), QStringLiteral("5")});
        // As it is without: the check can fail.
        EXPECT_GT(leftOf(line, QStringLiteral("36")), leftOf(line, QStringLiteral("19"))) << name;
    }
}

TEST(TextRuns, AWordOfTheOtherScriptWithinALine) {
    const QString name = QString::fromUtf8("\u0639\u0631\u0628\u0649");
    const QString line = QStringLiteral("Name “%1”, 9 mm × 2, from R-12").arg(name);
    expectInOrder(withRunsApart(line), {QStringLiteral("Name"), name, QStringLiteral("9"),
                                        QStringLiteral("2"), QStringLiteral("R-12")});
}

TEST(TextRuns, OtherWordsStayAsTheyAre) {
    for (const char* text : {"", "Odile Farrant, 36 × 19 mm", "Ærøskøbing 2", "山田, 3"})
        EXPECT_EQ(withRunsApart(QString::fromUtf8(text)), QString::fromUtf8(text));
}

// The right part of what is painted is that of the figures alone.
TEST(TextRuns, LinesAreDrawnSo) {
    const auto drawn = [](const QString& text) {
        QImage image(400, 30, QImage::Format_ARGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        paintLine(painter, QRectF(0, 0, 400, 30), text, Type::Body, Qt::black, Qt::AlignRight);
        return image.copy(400 - 90, 0, 90, 30);
    };
    const QString figures = QStringLiteral(", 36 × 19 mm");
    ASSERT_GE(widthOf(figures, Type::Body), 90);
    EXPECT_EQ(drawn(QString::fromUtf8("\u05e1\u05dc\u05de\u05d0") + figures),
              drawn(QStringLiteral("Odile") + figures));
}

TEST(TextRuns, LabelsAreReadSo) {
    const QString line = QString::fromUtf8("\u05e1\u05dc\u05de\u05d0, 36 × 19 mm");
    Label label;
    label.setText(line);
    EXPECT_EQ(label.text(), withRunsApart(line));
    EXPECT_EQ(Label(line).text(), withRunsApart(line));
}

} // namespace
} // namespace holdfast::app

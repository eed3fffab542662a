// SPDX-License-Identifier: GPL-3.0-or-later
// Many garments at once: the same again under another name, and a team's list typed, pasted or dropped as a
// file.

#include "app/places/fair_table/order_lines.h"
#include "app/widgets/button.h"
#include "tests/app/fair_table_fixture.h"

#include <QClipboard>
#include <QFile>
#include <QLabel>
#include <QPlainTextEdit>
#include <QTemporaryDir>
#include <QUrl>

namespace holdfast::app::test {

namespace {

class Team : public FairTable {
protected:
    QPlainTextEdit& list() { return child<QPlainTextEdit>("teamList"); }
    void openList() {
        key(Qt::Key_Escape);
        place().setFocus();
        keys("v");
    }
    QString wrong() { return child<QLabel>("teamWrong").text(); }
    QString sum() { return child<QLabel>("teamSum").text(); }
    std::string wordsOf(std::size_t garment) {
        std::string all;
        for (const TableDecal& decal : draft().garments[garment].decals)
            if (const auto* wording = std::get_if<Wording>(&decal.decal.content))
                all += (all.empty() ? "" : " ") + wording->text;
        return all;
    }
};

TEST_F(Team, TheSameAgainIsTypedOver) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("nJuno");
    key(Qt::Key_Escape);
    place().setFocus();
    keys("m");
    keys("Ida");
    ASSERT_EQ(draft().garments.size(), 2u);
    EXPECT_EQ(wordsOf(0), "Juno");
    EXPECT_EQ(wordsOf(1), "Ida");
    EXPECT_EQ(draft().garments[1].size, "M");
    EXPECT_EQ(draft().garments[1].decals.size(), 2u) << "and the heron";
    const auto lines = linesOf(draft(), table().sums(), table().shop().facts);
    EXPECT_EQ(lines.front().text, QStringLiteral("Tee, M, Moss · Juno")) << "lines show their words";
}

TEST_F(Team, AnotherGarmentOffersTheSameAgainAndATeam) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    place().setFocus();
    keys("+");
    EXPECT_TRUE(isSaid(QStringLiteral("The same again?")));
    EXPECT_TRUE(isSaid(QStringLiteral("A whole team?")));
    keys("m");
    ASSERT_EQ(draft().garments.size(), 2u);
    EXPECT_EQ(draft().garments[1].style, draft().garments[0].style);
    EXPECT_FALSE(isSaid(QStringLiteral("The same again?")));
}

TEST_F(Team, AListIsTypedAndTaken) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    openList();
    ASSERT_EQ(QApplication::focusWidget(), &list());
    for (const char* line : {"Juno, 7, M", "Wren, 12, L", "Ida"}) {
        typeText(QString::fromUtf8(line));
        key(Qt::Key_Return);
    }
    EXPECT_EQ(sum(), QStringLiteral("3 garments: 2 M, 1 L"));
    EXPECT_EQ(wrong(), QString());
    key(Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(draft().garments.size(), 3u);
    EXPECT_EQ(wordsOf(0), "Juno 7");
    EXPECT_EQ(draft().garments[1].size, "L");
    EXPECT_EQ(wordsOf(2), "Ida");
    takeItFor("Saltmarsh Rowing Club");
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders().front().garments, 3);
    EXPECT_EQ(orders().front().customer, "Saltmarsh Rowing Club");
}

TEST_F(Team, ListOfTheSpreadsheetGoesWhereThePatternHasItsWords) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("nName");
    key(Qt::Key_Escape);
    openList();
    QString pasted = QStringLiteral("Name\tSize\r\n");
    for (int at = 1; at <= 40; ++at)
        pasted += QStringLiteral("Player %1\tL\r\n").arg(at);
    QApplication::clipboard()->setText(pasted);
    key(Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(sum(), QStringLiteral("40 garments: 40 L (4 on the rail)"));
    key(Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(draft().garments.size(), 40u);
    EXPECT_EQ(wordsOf(39), "Player 40");
    EXPECT_EQ(draft().garments[39].decals.size(), 2u) << "the name took the place of the pattern's";
    place().undoOwn();
    EXPECT_EQ(draft().garments.size(), 1u) << "one step";
}

TEST_F(Team, WhatIsInTheWayOfManyIsSaidOnce) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    openList();
    QString pasted;
    for (int at = 1; at <= 200; ++at)
        pasted += QStringLiteral("Player %1, L\n").arg(at);
    QApplication::clipboard()->setText(pasted);
    key(Qt::Key_V, Qt::ControlModifier);
    key(Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(draft().garments.size(), 200u);
    EXPECT_TRUE(isSaid(QStringLiteral("Only 4 of 200 Tee, L, Moss on the rail.")));
    EXPECT_LE(table().messages().size(), 4u) << "not one for each garment";
    table().turn([](TableDraft& next) { next.garmentAt = 7; });
    EXPECT_TRUE(isSaid(QStringLiteral("Only 4 of 200 Tee, L, Moss on the rail.")));
}

TEST_F(Team, EachWrongLineIsSaidAndNothingIsAdded) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    openList();
    typeText(QStringLiteral("Juno, 7XL"));
    key(Qt::Key_Return);
    typeText(QStringLiteral("Ida, M"));
    key(Qt::Key_Return);
    typeText(QString(60, u'W') + QStringLiteral(", S"));
    EXPECT_TRUE(wrong().contains(QStringLiteral("Line 1: There is no size “7XL”."))) << wrong().toStdString();
    EXPECT_TRUE(wrong().contains(QStringLiteral("Line 3: “WWW"))) << wrong().toStdString();
    EXPECT_TRUE(wrong().contains(QStringLiteral("is too long for its place: letters ")))
        << wrong().toStdString();
    EXPECT_EQ(sum(), QStringLiteral("1 garment: 1 M"));
    key(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_TRUE(list().isVisible());
    EXPECT_TRUE(wrong().endsWith(QStringLiteral("Put these lines right first.")));
    EXPECT_EQ(draft().garments.size(), 1u);
    key(Qt::Key_Escape);
    EXPECT_FALSE(list().isVisible());
    EXPECT_EQ(draft().garments.size(), 1u);
}

TEST_F(Team, AFileThatIsDroppedIsRead) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("team list.csv"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("number;name;size\n7;Zo\xC3\xAB;M\n12;Wren;XL\n");
    file.close();
    openList();
    list().setPlainText(QUrl::fromLocalFile(path).toString());
    EXPECT_EQ(sum(), QStringLiteral("2 garments: 1 M, 1 XL (0 on the rail)"));
    list().setPlainText(folder.filePath(QStringLiteral("none.csv")));
    EXPECT_TRUE(wrong().contains(QStringLiteral("none.csv cannot be read"))) << wrong().toStdString();
    list().setPlainText(path);
    key(Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(draft().garments.size(), 2u);
    EXPECT_EQ(wordsOf(0), "Zoë 7");
}

TEST_F(Team, WithoutAGarmentTheListIsNotOpened) {
    stockUsualShop();
    open();
    place().setFocus();
    keys("v");
    EXPECT_FALSE(list().isVisible());
    EXPECT_TRUE(draft().isUntouched());
}

TEST_F(Team, LettersInTheListJumpNowhere) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    const TableDraft before = draft();
    openList();
    typeText(QStringLiteral("gscpdfnolebxkhmv+1"));
    EXPECT_EQ(draft(), before);
    EXPECT_EQ(QApplication::focusWidget(), &list());
}

} // namespace

} // namespace holdfast::app::test

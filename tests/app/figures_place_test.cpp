// SPDX-License-Identifier: GPL-3.0-or-later
// Figures by keyboard: each question with its answer, its rows, and what it says where there is nothing yet.

#include "app/places/figures/figures_place.h"

#include "app/desk/figures_beside.h"
#include "app/places/figures/figure_rows.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/label.h"
#include "db/actions/claim_actions.h"
#include "db/actions/fair_actions.h"
#include "db/actions/shop_actions.h"
#include "tests/app/shop_fixture.h"

#include <QTest>

#include <algorithm>

namespace holdfast::app::test {
namespace {

class Figures : public ShopFixture {
protected:
    void open() {
        m_place = std::make_unique<FiguresPlace>(desk());
        m_place->headerTools()->setParent(m_place.get());
        showWindow(*m_place, {1270, 708});
        m_place->opened();
    }
    void TearDown() override { m_place.reset(); }

    Choice& questions() { return *m_place->findChild<Choice*>(QStringLiteral("questions")); }
    QString answerTo(FigureQuestion question) {
        return questions().items().value(static_cast<int>(question)).second;
    }
    void ask(FigureQuestion question) {
        questions().takeFocus();
        QTest::keyClick(m_place->window()->focusWidget(), Qt::Key_Home);
        for (int step = 0; step < static_cast<int>(question); ++step)
            QTest::keyClick(m_place->window()->focusWidget(), Qt::Key_Down);
    }
    QString whole() { return m_place->findChild<Label*>(QStringLiteral("figureWhole"))->text(); }
    QString rows() {
        return m_place->findChild<FigureRows*>(QStringLiteral("figureRows"))->accessibleDescription();
    }

    // Two tees pressed and handed over; 30 days later the second came back.
    void pressAndHearOfIt() {
        const auto usual = stockUsualShop();
        const auto order = takeOrder({aGarment(usual), aGarment(usual)});
        const auto garments = garmentsOf(order.id);
        for (const GarmentId garment : garments) {
            cut(garment, usual.roll);
            press(garment);
        }
        valueOf(db::handOver(file(), order.id, now()));
        time().pass(std::chrono::days{30});
        valueOf(db::recordClaim(file(), {garments[1], {}, now().today(), Fault::Cracked, 4, ""}, now()));
    }

    std::unique_ptr<FiguresPlace> m_place;
};

TEST_F(Figures, AnEmptyShopSaysWhatWillStandThere) {
    open();
    const auto* empty = m_place->findChild<EmptyState*>();
    QTRY_VERIFY(empty->isVisible());
    bool isAsked = false;
    QObject::connect(&desk(), &ShopDesk::placeAsked,
                     [&](PlaceName place, const SlipTarget&) { isAsked = place == PlaceName::FairTable; });
    empty->button()->click();
    EXPECT_TRUE(isAsked);
}

TEST_F(Figures, WhatIsAskedMeanwhileIsReadInsteadAndNothingIsSaidToHaveFailed) {
    stockUsualShop();
    FiguresBeside beside;
    std::vector<LocalDate> told;
    bool hasFailed = false;
    QObject::connect(&beside, &FiguresBeside::ended, &beside,
                     [&](const ShopFigures& figures) { told.push_back(figures.from); });
    QObject::connect(&beside, &FiguresBeside::failed, &beside, [&] { hasFailed = true; });
    beside.begin(file(), std::nullopt, now());
    beside.begin(file(), Days{365}, now());
    beside.begin(file(), Days{0}, now());
    QTRY_VERIFY(!told.empty());
    EXPECT_EQ(told, std::vector<LocalDate>{now().today()});
    EXPECT_FALSE(hasFailed);
    beside.begin(file(), std::nullopt, now());
    // It goes while it reads: nothing hangs, and nobody is told.
}

TEST_F(Figures, EachQuestionHasItsAnswerBesideIt) {
    pressAndHearOfIt();
    open();
    QTRY_COMPARE(questions().items().size(), kFigureQuestions);
    EXPECT_EQ(answerTo(FigureQuestion::CameBack), QStringLiteral("1 of 2 garments"));
    EXPECT_EQ(answerTo(FigureQuestion::WhatIsCommon), QStringLiteral("too few to judge"));
    EXPECT_EQ(answerTo(FigureQuestion::Promises), QStringLiteral("1 of 1"));
    EXPECT_EQ(answerTo(FigureQuestion::Takings), QStringLiteral("£53.00"));
    EXPECT_TRUE(
        whole().startsWith(QStringLiteral("1 of 2 garments came back with a fault of pressing: 50 %")))
        << whole().toStdString();
    EXPECT_TRUE(rows().contains(QStringLiteral("Cracked, 1"))) << rows().toStdString();
}

TEST_F(Figures, QuestionsAreGoneThroughByKeysAndSaySmallNumbers) {
    pressAndHearOfIt();
    open();
    QTRY_COMPARE(questions().items().size(), kFigureQuestions);
    ask(FigureQuestion::WhatIsCommon);
    EXPECT_TRUE(rows().contains(QStringLiteral("Marram Soft, Dusk, 2, 1, 50 %"))) << rows().toStdString();
    EXPECT_TRUE(whole().startsWith(QStringLiteral("Too few to judge"))) << whole().toStdString();
    auto* by = m_place->findChild<Choice*>(QStringLiteral("comparedBy"));
    ASSERT_TRUE(by->isVisible());
    by->takeFocus();
    QTest::keyClick(m_place->window()->focusWidget(), Qt::Key_Right);
    EXPECT_TRUE(rows().contains(QStringLiteral("R-01, 2, 1"))) << rows().toStdString();
    ask(FigureQuestion::Film);
    EXPECT_FALSE(by->isVisible());
    EXPECT_TRUE(rows().contains(QStringLiteral("Marram Soft, Dusk, 5.0 m"))) << rows().toStdString();
    ask(FigureQuestion::Holding);
    EXPECT_TRUE(rows().contains(QStringLiteral("30 days"))) << rows().toStdString();
}

TEST_F(Figures, FairsSayWhatIsLeftAndWhatToBringToTheNext) {
    const auto usual = stockUsualShop();
    Fair fair;
    fair.name = "Saltmarsh Makers’ Market";
    fair.firstDay = fair.lastDay = now().today();
    fair.hours = {10h, 16h};
    fair.stallCost = Money{3000};
    valueOf(db::addFair(file(), fair));
    fair.firstDay = fair.lastDay = now().today() + Days{7};
    valueOf(db::addFair(file(), fair));
    auto settings = desk().shop()->facts.settings;
    settings.fairName = fair.name;
    valueOf(db::changeSettings(file(), settings));
    takeOrder({aGarment(usual), aGarment(usual), aGarment(usual)});
    settings.fairName = "A friend’s yard";
    valueOf(db::changeSettings(file(), settings));
    takeOrder({aGarment(usual)});
    time().pass(std::chrono::days{1});
    open();
    QTRY_COMPARE(questions().items().size(), kFigureQuestions);
    ask(FigureQuestion::Earned);
    const QString earned = rows();
    EXPECT_TRUE(earned.contains(QStringLiteral("Saltmarsh Makers’ Market, 25 Nov 2026, 3, £79.50")))
        << earned.toStdString();
    EXPECT_TRUE(earned.contains(QStringLiteral("Taken at A friend’s yard, 1, £26.50")))
        << earned.toStdString();
    EXPECT_TRUE(earned.contains(QStringLiteral("not a listed fair"))) << earned.toStdString();
    EXPECT_FALSE(earned.contains(QStringLiteral("2 Dec 2026"))) << "it is still to come";
    EXPECT_TRUE(m_place->findChild<Label*>(QStringLiteral("figureNote"))
                    ->text()
                    .startsWith(QStringLiteral("So few fairs")));
    ask(FigureQuestion::Bring);
    const auto cards = m_place->findChildren<Card*>();
    EXPECT_TRUE(std::ranges::any_of(cards, [](const Card* card) {
        return card->accessibleName() == QStringLiteral("What to bring to Saltmarsh Makers’ Market?");
    }));
    EXPECT_TRUE(whole().contains(QStringLiteral("expect about 2.0 to be asked for")))
        << "four on two fair days";
    EXPECT_TRUE(whole().contains(QStringLiteral("So few fair days"))) << whole().toStdString();
    EXPECT_TRUE(rows().contains(QStringLiteral("Tee, M, Moss, 2.0, "))) << rows().toStdString();
}

TEST_F(Figures, WithoutAFairItSaysWhatWillStandThere) {
    pressAndHearOfIt();
    open();
    QTRY_COMPARE(questions().items().size(), kFigureQuestions);
    EXPECT_EQ(answerTo(FigureQuestion::Earned), QStringLiteral("nothing yet"));
    ask(FigureQuestion::Bring);
    EXPECT_TRUE(whole().startsWith(QStringLiteral("Blanks to bring are shown here")))
        << whole().toStdString();
}

TEST_F(Figures, WhatChangesMeanwhileIsShown) {
    pressAndHearOfIt();
    open();
    QTRY_COMPARE(questions().items().size(), kFigureQuestions);
    ASSERT_TRUE(file().undo(file().recent(1).front().id).ok());
    QTRY_COMPARE(answerTo(FigureQuestion::CameBack), QStringLiteral("0 of 2 garments"));
}

TEST_F(Figures, ASpanLeavesOutWhatLiesBefore) {
    pressAndHearOfIt();
    time().pass(std::chrono::days{100});
    open();
    QTRY_COMPARE(answerTo(FigureQuestion::CameBack), QStringLiteral("1 of 2 garments"));
    auto* spans = m_place->findChild<Choice*>(QStringLiteral("figureSpan"));
    spans->takeFocus();
    QTest::keyClick(m_place->window()->focusWidget(), Qt::Key_Home);
    QTRY_COMPARE(answerTo(FigureQuestion::Takings), QStringLiteral("nothing yet"));
}

TEST(FigureRowsShown, ANameTooWideForItsColumnTakesTwoLines) {
    FigureRows rows;
    rows.resize(860, 100);
    FigureSheet sheet;
    sheet.heads = {QStringLiteral("Garments"), QStringLiteral("Ordered"), QStringLiteral("Left")};
    sheet.most = 1;
    const auto heightWith = [&](const QString& name, const QString& remark) {
        sheet.rows = {
            {name, FigureBar{1, {}, {}, 0}, {QStringLiteral("7"), QStringLiteral("£7.00"), {}}, remark}};
        rows.show(sheet);
        return rows.height();
    };
    const QString longest = QStringLiteral("Saltmarsh Makers’ and Fishermen’s Market, 12 Sep 2026");
    const int one = heightWith(QStringLiteral("Tee"), {});
    const int two = heightWith(longest, {});
    EXPECT_GT(two, one);
    EXPECT_EQ(heightWith(QStringLiteral("Tee"), QStringLiteral("too few to judge")), two);
    EXPECT_GT(heightWith(longest, QStringLiteral("too few to judge")), two);
    EXPECT_EQ(heightWith(QString(60, u'x'), {}), one) << "a single word is cut in its middle";
    rows.show(sheet);
    rows.resize(2000, 100);
    EXPECT_EQ(heightWith(QStringLiteral("Saltmarsh Makers’ Market, 12 Sep 2026"), {}), one)
        << "where there is room";
}

} // namespace
} // namespace holdfast::app::test

// SPDX-License-Identifier: GPL-3.0-or-later
// Every place asks for its papers by key; the finder finds them; what cannot be printed is said.

#include "app/papers/paper_making.h"
#include "app/places/film_shelf/film_shelf_place.h"
#include "app/places/order_book/order_book_place.h"
#include "app/places/press_walk/press_walk_place.h"
#include "app/shell/finder_entries.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/workshop.h"
#include "tests/app/fair_table_fixture.h"

#include <QTest>

namespace holdfast::app::test {
namespace {

struct AskedPaper {
    PaperName paper;
    SlipTarget matter;
};

class PaperKeys : public FairTable {
protected:
    void TearDown() override {
        m_shown.reset();
        FairTable::TearDown();
    }
    template <class OnePlace>
    void show() {
        m_shown = std::make_unique<OnePlace>(desk());
        listen(*m_shown);
        if (QWidget* tools = m_shown->headerTools())
            tools->setParent(m_shown.get());
        showWindow(*m_shown, {1270, 708});
        m_shown->opened();
    }
    void listen(QWidget& place) {
        QObject::connect(
            &desk(), &ShopDesk::paperAsked, &place,
            [this](PaperName paper, const SlipTarget& matter) { asked.push_back({paper, matter}); });
    }
    void hit(Qt::Key key) {
        QWidget* focused = m_shown->focusWidget();
        QTest::keyClick(focused ? focused : m_shown.get(), key);
    }

    std::unique_ptr<Place> m_shown;
    std::vector<AskedPaper> asked;
};

TEST_F(PaperKeys, FairTablePrintsTheTicketOfTheOrderJustTaken) {
    stockUsualShop();
    listen(open());
    EXPECT_FALSE(child<QWidget>("printTicket").isVisible());
    chooseHeronOnMossTee();
    typeInto("customerName", QStringLiteral("Odile"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1U);
    EXPECT_TRUE(child<QWidget>("printTicket").isVisible());
    key(Qt::Key_T);
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked[0].paper, PaperName::ClaimTicket);
    EXPECT_EQ(asked[0].matter.order, orders()[0].id);
}

TEST_F(PaperKeys, OrderBookPrintsTicketTagsAndCareCards) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    show<OrderBookPlace>();
    auto* list = m_shown->findChild<QWidget*>(QStringLiteral("orderList"));
    list->setFocus();
    hit(Qt::Key_Return); // into the order
    hit(Qt::Key_K);
    hit(Qt::Key_G);
    hit(Qt::Key_C); // nothing is pressed yet
    ASSERT_EQ(asked.size(), 2U);
    EXPECT_EQ(asked[0].paper, PaperName::ClaimTicket);
    EXPECT_EQ(asked[1].paper, PaperName::BagTags);
    EXPECT_EQ(asked[1].matter.order, order);
    const GarmentId garment = garmentsOf(order).front();
    cut(garment, usual.roll);
    press(garment);
    hit(Qt::Key_C);
    ASSERT_EQ(asked.size(), 3U);
    EXPECT_EQ(asked[2].paper, PaperName::CareCards);
    // Also from the hand-over.
    hit(Qt::Key_H);
    hit(Qt::Key_P);
    ASSERT_EQ(asked.size(), 4U);
    EXPECT_EQ(asked[3].paper, PaperName::CareCards);
}

TEST_F(PaperKeys, PressWalkPrintsTheDaySheet) {
    const auto usual = stockUsualShop();
    cut(garmentsOf(takeOrder({aGarment(usual)}).id).front(), usual.roll);
    show<PressWalkPlace>();
    hit(Qt::Key_D);
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked[0].paper, PaperName::DaySheet);
}

TEST_F(PaperKeys, FilmShelfPrintsTheLabelOfTheChosenRoll) {
    const auto usual = stockUsualShop();
    show<FilmShelfPlace>();
    hit(Qt::Key_P);
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked[0].paper, PaperName::RollLabel);
    EXPECT_EQ(asked[0].matter.roll, usual.roll);
}

TEST_F(PaperKeys, TheFinderFindsThem) {
    const auto usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    const QString roll = QString::fromStdString(desk().shop()->facts.rolls.at(usual.roll).label());
    const auto first = [&](const QString& typed) -> std::optional<AskPaper> {
        const auto found = findEntries(desk(), typed);
        const auto* paper = found.empty() ? nullptr : std::get_if<AskPaper>(&found.front().target);
        return paper ? std::optional{*paper} : std::nullopt;
    };
    const auto ticket = first(QStringLiteral("%1 ticket").arg(taken.number));
    ASSERT_TRUE(ticket);
    EXPECT_EQ(ticket->paper, PaperName::ClaimTicket);
    EXPECT_EQ(ticket->matter.order, taken.id);
    const auto label = first(roll + QStringLiteral(" label"));
    ASSERT_TRUE(label);
    EXPECT_EQ(label->paper, PaperName::RollLabel);
    const auto day = first(QStringLiteral("day sheet"));
    ASSERT_TRUE(day);
    EXPECT_EQ(day->paper, PaperName::DaySheet);
}

// Nothing is sent to a printer here: what is refused is said in the foot.
TEST_F(PaperKeys, WhatCannotBePrintedIsSaidInTheFoot) {
    const auto usual = stockUsualShop();
    SlipTarget matter;
    matter.order = takeOrder({aGarment(usual)}).id;
    close();
    MainWindow window(time().clock());
    window.open(valueOf(db::Shop::open(path(), time().clock().now)));
    showWindow(window);
    emit window.desk()->paperAsked(PaperName::CareCards, matter);
    EXPECT_TRUE(window.workshop()->foot()->words().contains(QStringLiteral("pressed yet")))
        << window.workshop()->foot()->words().toStdString();
}

} // namespace
} // namespace holdfast::app::test

// SPDX-License-Identifier: GPL-3.0-or-later
// Orders that are gone from the open ones: undone, cancelled, hidden by the filter. All are found and come
// back; and the order shown keeps what matters in view in every window.

#include "app/places/order_book/order_book_place.h"

#include "app/places/order_book/garment_lines.h"
#include "app/places/order_book/history_lines.h"
#include "app/places/order_book/order_list.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/field.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QLabel>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

namespace holdfast::app::test {

namespace {

class UndoneInBook : public ShopFixture {
protected:
    OrderBookPlace& open(QSize size = {1270, 682}) {
        m_place = std::make_unique<OrderBookPlace>(desk());
        m_place->headerTools();
        showWindow(*m_place, size);
        m_place->opened();
        QObject::connect(&desk(), &ShopDesk::slipAsked, m_place.get(),
                         [this](SlipName slip, const SlipTarget&) { m_slips.push_back(slip); });
        return *m_place;
    }
    void TearDown() override { m_place.reset(); }

    template <class Child>
    Child& find(const char* name) {
        auto* found = m_place->findChild<Child*>(QString::fromLatin1(name));
        if (found == nullptr)
            stopBecause(std::string("no ") + name);
        return *found;
    }
    OrderList& list() { return find<OrderList>("orderList"); }
    int count() { return list().model()->rowCount(); }
    QString lineAt(int row) { return list().model()->index(row, 0).data(Qt::AccessibleTextRole).toString(); }
    QWidget* focused() { return m_place->window()->focusWidget(); }
    void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(focused(), key, modifiers);
    }
    void searchFor(const QString& text) {
        auto& search = find<Field>("orderSearch");
        search.setFocus();
        search.selectAll();
        typeText(text);
    }
    QString emptyWords() { return m_place->findChild<EmptyState*>()->accessibleName(); }
    std::size_t entries() { return file().recent(10'000).size(); }
    void undoLast() { ASSERT_TRUE(file().undo(file().recent(1).front().id).ok()); }
    bool isInView(const QWidget& widget) {
        return widget.isVisible() && !widget.visibleRegion().isEmpty() &&
               widget.visibleRegion().boundingRect() == widget.rect();
    }

    std::unique_ptr<OrderBookPlace> m_place;
    std::vector<SlipName> m_slips;
};

TEST_F(UndoneInBook, AnUndoneOrderIsUnderAllAndOneKeyPutsItBack) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Ama Whitlock");
    const auto undone = takeOrder({aGarment(usual), aGarment(usual, "L")}, "Odile Farrant");
    undoLast();
    open();
    EXPECT_EQ(count(), 1);
    hit(Qt::Key_L, Qt::ControlModifier);
    ASSERT_EQ(count(), 2);
    EXPECT_TRUE(lineAt(0).contains(QStringLiteral("Odile"))) << lineAt(0).toStdString();
    EXPECT_TRUE(lineAt(0).contains(QStringLiteral("Undone"))) << lineAt(0).toStdString();
    list().setCurrentIndex(list().model()->index(0, 0));
    hit(Qt::Key_Return);
    auto& sheet = find<QWidget>("undoneSheet");
    ASSERT_TRUE(sheet.isVisible());
    QString shown;
    for (const QLabel* label : sheet.findChildren<QLabel*>())
        shown += label->text() + u'\n';
    EXPECT_TRUE(shown.contains(QStringLiteral("Tee, L, Moss"))) << shown.toStdString();
    EXPECT_EQ(find<HistoryLines>("undoneHistory").isVisible(), true);
    hit(Qt::Key_R);
    EXPECT_FALSE(sheet.isVisible());
    ASSERT_TRUE(desk().shop()->facts.orders.find(undone.id));
    EXPECT_EQ(desk().shop()->facts.orders.at(undone.id).number, undone.number);
    EXPECT_TRUE(find<QWidget>("orderSheet").isAncestorOf(focused())) << "the keyboard stays with the order";
}

TEST_F(UndoneInBook, AnOrderUndoneFromItsHistoryStaysInViewToBePutBack) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Ama Whitlock");
    const auto order = takeOrder({aGarment(usual)}, "Odile Farrant");
    open();
    find<QWidget>("historyLines").setFocus();
    hit(Qt::Key_Return);
    EXPECT_FALSE(desk().shop()->facts.orders.find(order.id));
    EXPECT_TRUE(find<QWidget>("undoneSheet").isVisible());
    EXPECT_EQ(focused(), &find<Button>("putUndoneBack"));
    hit(Qt::Key_Return);
    EXPECT_TRUE(desk().shop()->facts.orders.find(order.id));
    EXPECT_TRUE(find<QWidget>("garmentLines").isVisible());
}

TEST_F(UndoneInBook, TheSearchFindsItUnderAllByWhateverWasTyped) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Ama Whitlock");
    auto draft = anOrder({aGarment(usual)}, "Åsa Lindkvist");
    draft.customerPhone = "07700 900421";
    valueOf(db::takeOrder(file(), draft, now()));
    undoLast();
    open();
    for (const char* typed : {"lindkvist", "kvist", "lindqvist", "asa", "07700900421", "421"}) {
        m_place->findChild<Choice*>(QStringLiteral("orderFilter"))->setChosen(0);
        searchFor(QString::fromUtf8(typed));
        EXPECT_EQ(count(), 0) << typed;
        EXPECT_TRUE(emptyWords().contains(QStringLiteral("One under All does")))
            << emptyWords().toStdString();
        hit(Qt::Key_Return);
        ASSERT_EQ(count(), 1) << typed;
        EXPECT_TRUE(lineAt(0).contains(QStringLiteral("Undone")));
        EXPECT_EQ(focused(), &list());
    }
}

TEST_F(UndoneInBook, WhatTheFilterHidesIsCountedAndShown) {
    const UsualShop usual = stockUsualShop();
    for (int done = 0; done < 3; ++done) {
        const auto order = takeOrder({aGarment(usual)}, "Sandling");
        ASSERT_TRUE(db::cancelOrder(file(), order.id, "changed their mind").ok());
    }
    takeOrder({aGarment(usual)}, "Sandling");
    open();
    EXPECT_FALSE(find<Button>("moreUnderAll").isVisible());
    searchFor(QStringLiteral("sand"));
    EXPECT_EQ(count(), 1);
    EXPECT_TRUE(find<Button>("moreUnderAll").isVisible());
    EXPECT_EQ(find<Button>("moreUnderAll").text().toStdString(), "3 more are under All");
    hit(Qt::Key_L, Qt::ControlModifier);
    EXPECT_EQ(count(), 4);
    EXPECT_FALSE(find<Button>("moreUnderAll").isVisible());
}

TEST_F(UndoneInBook, ACancelledOrderIsPutBackByTheSameKey) {
    const UsualShop usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)});
    ASSERT_TRUE(db::moveMoney(file(), order.id, MoneyKind::Deposit, Money{500}, PaidHow::Card).ok());
    ASSERT_TRUE(db::cancelOrder(file(), order.id, "changed their mind").ok());
    open();
    SlipTarget matter;
    matter.order = order.id;
    m_place->turnTo(matter);
    find<QWidget>("garmentLines").setFocus();
    EXPECT_FALSE(find<Button>("cancelOrder").isVisible());
    EXPECT_TRUE(find<Button>("takeMoney").isEnabled()) << "what was paid can be paid back";
    hit(Qt::Key_R);
    EXPECT_EQ(desk().shop()->facts.orders.at(order.id).state, OrderState::Confirmed);
    EXPECT_TRUE(find<Button>("cancelOrder").isVisible());
}

TEST_F(UndoneInBook, AQuotationIsConfirmedByAnActOfThatName) {
    const UsualShop usual = stockUsualShop();
    auto draft = anOrder({aGarment(usual)});
    draft.isQuotation = true;
    draft.isConfirmed = false;
    const auto order = valueOf(db::takeOrder(file(), draft, now()));
    open();
    find<QWidget>("garmentLines").setFocus();
    EXPECT_EQ(find<Button>("confirmWording").text().toStdString(), "Confirm order");
    EXPECT_FALSE(find<Button>("takeMoney").isEnabled());
    EXPECT_TRUE(find<Button>("takeMoney").toolTip().contains(QStringLiteral("takes no money")));
    hit(Qt::Key_W);
    EXPECT_EQ(desk().shop()->facts.orders.at(order.id).state, OrderState::Confirmed);
    EXPECT_EQ(find<Button>("confirmWording").text().toStdString(), "Confirm wording");
    EXPECT_TRUE(find<Button>("takeMoney").isEnabled());
}

TEST_F(UndoneInBook, LettersInTheListGoToACustomerAndDoNothingElse) {
    const UsualShop usual = stockUsualShop();
    for (const char* name : {"Ama Whitlock", "Theo Xylander", "Mia Hu", "Uma Bek", "Wilf Ansah"})
        takeOrder({aGarment(usual)}, name);
    open();
    list().setFocus();
    const auto before = entries();
    for (int key = Qt::Key_A; key <= Qt::Key_Z; ++key) {
        QTest::qWait(1);
        hit(static_cast<Qt::Key>(key));
        EXPECT_EQ(focused(), &list()) << static_cast<char>(key);
    }
    EXPECT_EQ(entries(), before);
    EXPECT_TRUE(m_slips.empty());
    QTest::qWait(QApplication::keyboardInputInterval() + 20);
    typeText(QStringLiteral("xyl"));
    EXPECT_TRUE(
        list().currentIndex().data(Qt::AccessibleTextRole).toString().contains(QStringLiteral("Theo")));
    QTest::qWait(QApplication::keyboardInputInterval() + 20);
    typeText(QStringLiteral("1"));
    EXPECT_TRUE(
        list().currentIndex().data(Qt::AccessibleTextRole).toString().startsWith(QStringLiteral("1,")));
}

TEST_F(UndoneInBook, EnterInTheSearchGoesIntoTheOrderThatIsLeft) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Ama Whitlock");
    takeOrder({aGarment(usual)}, "Wilf Ansah");
    open();
    searchFor(QStringLiteral("ansah"));
    hit(Qt::Key_Return);
    EXPECT_EQ(focused(), &find<QWidget>("garmentLines"));
    hit(Qt::Key_U);
    EXPECT_EQ(m_slips, std::vector<SlipName>{SlipName::Customer});
}

TEST_F(UndoneInBook, UndoIsOfferedOnlyWhereNothingLaterIsBuiltOnIt) {
    const UsualShop usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)});
    ASSERT_TRUE(db::moveMoney(file(), order.id, MoneyKind::Deposit, Money{500}, PaidHow::Card).ok());
    open();
    auto& history = find<HistoryLines>("historyLines");
    history.setFocus();
    const auto spoken = [&] { return history.accessibleDescription().toStdString(); };
    EXPECT_TRUE(spoken().ends_with("Undo")) << spoken();
    hit(Qt::Key_Down);
    EXPECT_FALSE(spoken().ends_with("Undo")) << spoken() << ": its deposit is built on it";
    const auto before = entries();
    hit(Qt::Key_Return);
    EXPECT_EQ(entries(), before);
}

// ── in every window ───────────────────────────────────────────────────────────────────────────────────

TEST_F(UndoneInBook, WithFourGarmentsMoreThanOneLineOfTheHistoryIsInView) {
    const UsualShop usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual), aGarment(usual), aGarment(usual), aGarment(usual)});
    for (int more = 0; more < 4; ++more)
        ASSERT_TRUE(db::moveMoney(file(), order.id, MoneyKind::Payment, Money{100}, PaidHow::Cash).ok());
    open({1270, 682}); // of a window of 1366 × 768
    QTest::qWait(0);   // a row of keys that are not for this order goes
    const auto seen = find<HistoryLines>("historyLines").visibleRegion().boundingRect().height();
    EXPECT_GE(seen, 2 * 32);
}

TEST_F(UndoneInBook, WithFourteenGarmentsTheMoneyStaysInView) {
    const UsualShop usual = stockUsualShop();
    std::vector<GarmentDraft> garments(14, aGarment(usual));
    takeOrder(garments, "A team with a name that takes more than one line of the order’s head");
    for (const QSize size : {QSize{1270, 682}, QSize{1184, 560}, QSize{704, 1194}}) {
        open(size);
        find<QWidget>("garmentLines").setFocus();
        for (int down = 0; down < 13; ++down)
            hit(Qt::Key_Down);
        QTest::qWait(0);
        EXPECT_TRUE(isInView(find<Button>("takeMoney"))) << size.width() << "×" << size.height();
        EXPECT_TRUE(isInView(find<Button>("handOver"))) << size.width() << "×" << size.height();
        EXPECT_EQ(find<QScrollArea>("bookScroll").horizontalScrollBar()->maximum(), 0)
            << "nothing is cut at the side";
        m_place.reset();
    }
}

// 1366 × 768 at 200 %, opened so: the filters with their counts are below the search.
TEST_F(UndoneInBook, FiltersGoBelowTheSearchInANarrowWindow) {
    const UsualShop usual = stockUsualShop();
    for (int order = 0; order < 12; ++order)
        takeOrder({aGarment(usual)});
    const QSize narrow{587, 316};
    open(narrow);
    QTest::qWait(10);
    const auto bottomOf = [](const QWidget& part) {
        return part.mapTo(part.window(), part.rect().bottomLeft()).y();
    };
    EXPECT_GT(bottomOf(find<QWidget>("orderFilter")), bottomOf(find<QWidget>("orderSearch")));
}

TEST_F(UndoneInBook, EveryActIsReachedInASmallWindow) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    for (const QSize size : {QSize{928, 514}, QSize{704, 1194}, QSize{704, 514}}) {
        open(size);
        for (const char* name : {"movePromise", "copyMessage", "editCustomer", "cancelOrder", "printTicket",
                                 "printTags", "printCards", "takeMoney"}) {
            auto& button = find<Button>(name);
            QTest::qWait(10); // until the parts are laid out
            find<QScrollArea>("bookScroll").ensureWidgetVisible(&button);
            QTest::qWait(0);
            EXPECT_EQ(find<QScrollArea>("bookScroll").horizontalScrollBar()->maximum(), 0);
            EXPECT_TRUE(isInView(button)) << name << " at " << size.width() << "×" << size.height();
        }
        m_place.reset();
    }
}

} // namespace

} // namespace holdfast::app::test

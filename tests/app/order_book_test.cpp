// SPDX-License-Identifier: GPL-3.0-or-later
// Order book by keyboard: search, one order whole, undo, hand-over; and any text typed into the search.

#include "app/places/order_book/order_book_place.h"

#include "app/places/order_book/order_pages.h"
#include "app/places/order_book/order_view.h"
#include "app/places/order_book/where_it_is.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/switch.h"
#include "db/tables/order_book.h"
#include "tests/app/shop_fixture.h"
#include "tests/db/steps_of_sqlite.h"

#include <QAbstractItemModelTester>
#include <QClipboard>
#include <QGuiApplication>
#include <QListView>
#include <QTest>

#include <memory>

namespace holdfast::app::test {

namespace {

class OrderBook : public ShopFixture {
protected:
    OrderBookPlace& open() {
        m_place = std::make_unique<OrderBookPlace>(desk());
        m_place->headerTools();
        showWindow(*m_place, {1270, 708});
        m_place->opened();
        return *m_place;
    }
    void TearDown() override { m_place.reset(); }

    QListView& list() { return *m_place->findChild<QListView*>(QStringLiteral("orderList")); }
    Field& search() { return *m_place->findChild<Field*>(QStringLiteral("orderSearch")); }
    QString lineAt(int row) { return list().model()->index(row, 0).data(Qt::AccessibleTextRole).toString(); }
    int count() { return list().model()->rowCount(); }
    void searchFor(const QString& text) {
        search().setFocus();
        search().selectAll();
        if (text.isEmpty())
            QTest::keyClick(focused(), Qt::Key_Delete);
        else
            typeText(text);
    }
    QWidget* focused() { return m_place->window()->focusWidget(); }
    std::vector<db::HistoryEntry> historyOf(OrderId order) { return file().history(order, 50); }

    std::unique_ptr<OrderBookPlace> m_place;
};

// Orders of many customers, put into the file by plain SQL: what they are called is all that matters here.
void fillWithOrders(db::Shop& shop, const UsualShop& usual, int orders) {
    const auto filled = shop.act([&](db::Writer& writer) -> Result<Done> {
        for (int each = 1; each <= orders; ++each) {
            const auto customer = writer.newId<CustomerId>();
            writer.connection().run("INSERT INTO customer (id, name, phone) VALUES (?1, ?2, ?3)", customer,
                                    "Maker " + std::to_string(each), std::to_string(100000 + each));
            const auto order = writer.newId<OrderId>();
            writer.connection().run(
                "INSERT INTO shop_order (id, number, customer_id, state, taken_at, "
                "taken_at_place, promised) VALUES (?1, ?2, ?3, 'handed-over', ?4, 'fair', "
                "'2026-11-20T15:00')",
                order, 1000 + each, customer, kMorning);
            writer.connection().run("INSERT INTO garment (id, order_id, position, style_id, size, colour_id, "
                                    "price_minor) VALUES (?1, ?2, 1, ?3, 'M', ?4, 2600)",
                                    writer.newId<GarmentId>(), order, usual.style, usual.moss);
        }
        writer.describe(said("Filled the book"));
        return Done{};
    });
    ASSERT_TRUE(filled.ok()) << filled.error().message.english();
}

TEST_F(OrderBook, AnEmptyBookSaysWhatWillStandThereAndStartsAnOrder) {
    open();
    EXPECT_EQ(count(), 0);
    bool isAsked = false;
    QObject::connect(&desk(), &ShopDesk::placeAsked,
                     [&](PlaceName place, const SlipTarget&) { isAsked = place == PlaceName::FairTable; });
    QTest::keyClick(m_place.get(), Qt::Key_N, Qt::ControlModifier);
    EXPECT_TRUE(isAsked);
}

TEST_F(OrderBook, EachKeyOfASearchNarrowsTheBook) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    takeOrder({aGarment(usual, "L")}, "Wilf Ansah");
    open();
    ASSERT_EQ(count(), 2);
    EXPECT_TRUE(lineAt(0).contains(QStringLiteral("Wilf"))) << lineAt(0).toStdString();
    searchFor(QStringLiteral("od"));
    ASSERT_EQ(count(), 1);
    EXPECT_TRUE(lineAt(0).contains(QStringLiteral("Odile")));
    searchFor(QStringLiteral("hero"));
    EXPECT_EQ(count(), 2) << "every order here has a heron";
    searchFor(QStringLiteral("nobody of that name"));
    EXPECT_EQ(count(), 0);
    QTest::keyClick(focused(), Qt::Key_Escape);
    EXPECT_EQ(count(), 2) << "Escape clears the search";
}

TEST_F(OrderBook, AnyTextMayBeTypedIntoTheSearch) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Zoë O’Hara-Šimić");
    open();
    for (const char* text :
         {"* ( -- ' % \" OR NEAR(", "\"", "a:b", "NOT", "'; DROP TABLE shop_order; --", "😀"}) {
        searchFor(QString::fromUtf8(text));
        EXPECT_LE(count(), 1);
    }
    searchFor(QString(500, u'x'));
    EXPECT_EQ(count(), 0);
    searchFor(QStringLiteral("zoe"));
    EXPECT_EQ(count(), 1) << "accents need not be typed";
    searchFor(QStringLiteral("šim"));
    EXPECT_EQ(count(), 1);
}

// The tester fetches while it still counts a reset as under way, so it comes once the first page stands.
TEST_F(OrderBook, TheModelKeepsTheRulesOfModelsWhilePagesAreFetched) {
    const UsualShop usual = stockUsualShop();
    fillWithOrders(file(), usual, 450);
    OrderModel model;
    OrderPages pages(desk());
    pages.look("", BookFilter::All, db::OrderSort::Newest);
    model.show(desk().shop(), [&] { return pages.next(OrderModel::kPage); });
    ASSERT_EQ(model.rowCount(), OrderModel::kPage);
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    while (model.canFetchMore({}))
        model.fetchMore({});
    EXPECT_EQ(model.rowCount(), 450);
}

TEST_F(OrderBook, TwentyThousandOrdersAnswerEachKey) {
    const UsualShop usual = stockUsualShop();
    fillWithOrders(file(), usual, 20'000);
    open();
    m_place->findChild<Choice*>(QStringLiteral("orderFilter"))->takeFocus();
    QTest::keyClick(focused(), Qt::Key_End);
    search().setFocus();
    std::int64_t most = 0;
    for (const char letter : std::string("maker 19")) {
        const auto steps = file().read(
            [](db::Connection& connection) { return std::make_unique<db::StepsOfSqlite>(connection); });
        QTest::keyClick(focused(), letter);
        most = std::max(most, (*steps)->taken());
    }
    EXPECT_EQ(search().text(), QStringLiteral("maker 19"));
    EXPECT_EQ(count(), OrderModel::kPage);
    // Going through the shop's words once, for near ones, takes 330,000; through them twice, or through the
    // whole file, it is more than this.
    EXPECT_GT(most, 0);
    EXPECT_LT(most, 500'000);
}

TEST_F(OrderBook, UndoingAPaymentStrikesItThroughAndTheMoneyIsOwedAgain) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    ASSERT_TRUE(db::moveMoney(file(), taken.id, MoneyKind::Payment, Money{500}, PaidHow::Cash).ok());
    open();
    auto* history = m_place->findChild<QWidget*>(QStringLiteral("historyLines"));
    history->setFocus();
    QTest::keyClick(history, Qt::Key_Return);
    EXPECT_EQ(desk().shop()->facts.orders.at(taken.id).paid.minor, 0);
    const auto entries = historyOf(taken.id);
    ASSERT_GE(entries.size(), 3U);
    EXPECT_TRUE(entries[1].isUndone());
    EXPECT_TRUE(entries[0].undoes.has_value());
    // The same line puts it back.
    QTest::keyClick(history, Qt::Key_Down);
    QTest::keyClick(history, Qt::Key_Return);
    EXPECT_EQ(desk().shop()->facts.orders.at(taken.id).paid.minor, 500);
}

TEST_F(OrderBook, AHeldGarmentOffersWhatFreesIt) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual, "L")}); // only unwashed blanks of L
    open();
    EXPECT_TRUE(lineAt(0).contains(QStringLiteral("Held"))) << lineAt(0).toStdString();
    std::optional<PlaceName> asked;
    QObject::connect(&desk(), &ShopDesk::placeAsked,
                     [&](PlaceName place, const SlipTarget&) { asked = place; });
    auto* garments = m_place->findChild<QWidget*>(QStringLiteral("garmentLines"));
    garments->setFocus();
    QTest::keyClick(garments, Qt::Key_Return);
    EXPECT_EQ(asked, PlaceName::BlankRail);
}

TEST_F(OrderBook, HandingOverShowsTheCareTextAndClosesTheOrder) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    const GarmentId garment = garmentsOf(taken.id).front();
    cut(garment, usual.roll);
    press(garment);
    open();
    list().setFocus();
    QTest::keyClick(focused(), Qt::Key_Return); // into the order
    QTest::keyClick(focused(), Qt::Key_H);
    auto* care = m_place->findChild<QWidget*>(QStringLiteral("careSheet"));
    ASSERT_TRUE(care->isVisible());
    QTest::keyClick(focused(), Qt::Key_C, Qt::ControlModifier);
    const QString copied = QGuiApplication::clipboard()->text();
    EXPECT_TRUE(copied.contains(QStringLiteral("Do not wash before"))) << copied.toStdString();
    EXPECT_TRUE(copied.contains(QStringLiteral("inside out"))) << copied.toStdString();
    QTest::keyClick(focused(), Qt::Key_Return);
    const auto view = viewOrder(desk(), taken.id);
    ASSERT_TRUE(view.has_value());
    EXPECT_EQ(view->order().state, OrderState::HandedOver);
}

TEST_F(OrderBook, ChosenGarmentsAreHandedOverAndTheOthersStay) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual), aGarment(usual), aGarment(usual)}).id;
    for (const GarmentId garment : garmentsOf(order)) {
        cut(garment, usual.roll);
        press(garment);
    }
    auto& book = open();
    list().setFocus();
    QTest::keyClick(focused(), Qt::Key_Return);
    QTest::keyClick(focused(), Qt::Key_H);
    auto* first = book.findChild<Switch*>(QStringLiteral("goes-a"));
    ASSERT_TRUE(first);
    first->setFocus();
    QTest::keyClick(focused(), Qt::Key_Space);
    auto* handOver = book.findChild<Button*>(QStringLiteral("handOverNow"));
    handOver->setFocus();
    QTest::keyClick(focused(), Qt::Key_Return);
    EXPECT_EQ(historyOf(order).front().title.english().substr(0, 30), "Handed over 1, 2 of 3 garments");
    const auto left = desk().shop()->facts.garmentsOf(order);
    EXPECT_FALSE(left.at(0)->handedOverAt);
    EXPECT_TRUE(left.at(1)->handedOverAt);
    EXPECT_FALSE(book.findChild<Button*>(QStringLiteral("handOverNow"))->text().isEmpty());
}

TEST_F(OrderBook, TheFairTableIsAskedForAnOrderToBeChangedOrTakenAgain) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    open();
    std::vector<SlipTarget> asked;
    QObject::connect(&desk(), &ShopDesk::placeAsked, &desk(), [&](PlaceName place, const SlipTarget& about) {
        EXPECT_EQ(place, PlaceName::FairTable);
        asked.push_back(about);
    });
    list().setFocus();
    QTest::keyClick(focused(), Qt::Key_Return);
    QTest::keyClick(focused(), Qt::Key_O);
    QTest::keyClick(focused(), Qt::Key_A);
    ASSERT_EQ(asked.size(), 2u);
    EXPECT_EQ(asked[0].order, order);
    EXPECT_FALSE(asked[0].isAgain);
    EXPECT_TRUE(asked[1].isAgain);
}

TEST_F(OrderBook, NothingIsHandedOverBeforeItIsPressed) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    open();
    list().setFocus();
    QTest::keyClick(focused(), Qt::Key_Return);
    QTest::keyClick(focused(), Qt::Key_H);
    EXPECT_FALSE(m_place->findChild<QWidget*>(QStringLiteral("careSheet"))->isVisible());
    EXPECT_EQ(desk().shop()->facts.orders.at(taken.id).state, OrderState::Confirmed);
}

TEST_F(OrderBook, TurningToAnOrderFindsItEvenWhereTheFilterHidesIt) {
    const UsualShop usual = stockUsualShop();
    const auto first = takeOrder({aGarment(usual)}, "Imre Vasko");
    ASSERT_TRUE(db::cancelOrder(file(), first.id, "changed their mind").ok());
    takeOrder({aGarment(usual)}, "Ama Whitlock");
    open();
    ASSERT_EQ(count(), 1);
    SlipTarget matter;
    matter.order = first.id;
    m_place->turnTo(matter);
    EXPECT_EQ(count(), 2);
    EXPECT_TRUE(
        list().currentIndex().data(Qt::AccessibleTextRole).toString().contains(QStringLiteral("Imre")));
}

// More was paid than it costs: here by an undo; two laptops bring it about between them.
TEST_F(OrderBook, AnOrderThatWasPaidTooMuchSaysSoUntilItIsPutRight) {
    const UsualShop usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)});
    const Money total = desk().shop()->facts.orders.at(order.id).total;
    const auto move = [&](MoneyKind kind, Money amount) {
        valueOf(db::moveMoney(file(), order.id, kind, amount, PaidHow::Cash));
    };
    SlipTarget about;
    about.order = order.id;
    open().turnTo(about);
    const auto* odds = m_place->findChild<QWidget*>(QStringLiteral("orderOdds"));
    EXPECT_TRUE(odds->isHidden());
    move(MoneyKind::Payment, total);
    move(MoneyKind::Refund, total);
    const EntryId refund = historyOf(order.id).front().id;
    move(MoneyKind::Payment, total);
    EXPECT_TRUE(odds->isHidden());
    valueOf(file().undo(refund));
    EXPECT_FALSE(odds->isHidden());
    const auto line = db::findOrders(file().connection(), "", db::OrderFilter::All, 1).front();
    EXPECT_EQ(whereIsOrder(*desk().shop(), line).words, QStringLiteral("Paid too much"));
    move(MoneyKind::Refund, total);
    EXPECT_TRUE(odds->isHidden());
}

} // namespace

} // namespace holdfast::app::test

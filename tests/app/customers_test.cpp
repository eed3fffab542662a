// SPDX-License-Identifier: GPL-3.0-or-later
// A customer's page: what is on it, what is changed there, joining, and the ways that lead to it by keys.

#include "app/places/order_book/order_sheet.h"
#include "app/shell/command_finder.h"
#include "app/shell/finder_entries.h"
#include "app/shell/main_window.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/option_list.h"
#include "app/slips/orders_of_customer.h"
#include "app/widgets/label.h"
#include "db/actions/claim_actions.h"
#include "db/tables/customer_page.h"
#include "tests/app/slips_fixture.h"

#include <QAbstractButton>
#include <QApplication>
#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

#include <algorithm>

namespace holdfast::app::test {
namespace {

class CustomerSlips : public SlipsFixture {
protected:
    static SlipTarget ofOrder(OrderId order) {
        SlipTarget matter;
        matter.order = order;
        return matter;
    }
    static SlipTarget ofCustomer(CustomerId customer) {
        SlipTarget matter;
        matter.customer = customer;
        return matter;
    }
    CustomerId customerOf(OrderId order) {
        return CustomerId{file().connection().number("SELECT customer_id FROM shop_order WHERE id = " +
                                                     std::to_string(order.value))};
    }
    db::CustomerPage pageOf(CustomerId customer) { return *db::customerPage(file().connection(), customer); }
    std::string textOf(const char* name) {
        const auto* label = find<Label>(QString::fromLatin1(name));
        return label ? label->text().toStdString() : "not there";
    }
    QStringList lines() {
        QStringList all;
        if (auto* orders = slip().findChild<OrdersOfCustomer*>())
            for (int line = 0; line < orders->partCount(); ++line)
                all.append(orders->partName(line));
        return all;
    }

    UsualShop m_usual = stockUsualShop();
};

TEST_F(CustomerSlips, ThePageSaysWhatIsKnown) {
    const auto first = takeOrder({aGarment(m_usual), aGarment(m_usual)}, "Anna Reed");
    const auto garment = garmentsOf(first.id).front();
    for (const GarmentId each : garmentsOf(first.id)) {
        cut(each, m_usual.roll);
        ShopFixture::press(each);
    }
    ASSERT_TRUE(db::handOver(file(), first.id, now()).ok());
    const Money total = pageOf(customerOf(first.id)).orders.front().line.total;
    ASSERT_TRUE(db::moveMoney(file(), first.id, MoneyKind::Payment, total, PaidHow::Cash).ok());
    ASSERT_TRUE(db::recordClaim(file(),
                                {.garment = garment,
                                 .decal = {},
                                 .on = now().today(),
                                 .fault = Fault::Cracked,
                                 .washes = 3,
                                 .note = {}},
                                now())
                    .ok());
    const auto second = takeOrder({aGarment(m_usual, "L")}, "Anna Reed");
    takeOrder({aGarment(m_usual, "L")}, "Bree Tully");
    ASSERT_TRUE(open(SlipName::Customer, ofCustomer(customerOf(first.id))));
    const QString owed = QString::fromStdString(textOf("owedInAll"));
    EXPECT_TRUE(owed.startsWith(QStringLiteral("2 orders, "))) << owed.toStdString();
    EXPECT_TRUE(owed.endsWith(QStringLiteral(" owed in all"))) << owed.toStdString();
    EXPECT_EQ(textOf("sizesTaken"), "Tee: 2 × M, 1 × L");
    EXPECT_TRUE(QString::fromStdString(textOf("cameBackOfCustomer"))
                    .startsWith(QStringLiteral("%1-a: ").arg(first.number)))
        << textOf("cameBackOfCustomer");
    EXPECT_TRUE(QString::fromStdString(textOf("cameBackOfCustomer"))
                    .endsWith(QStringLiteral("nothing was done yet")));
    ASSERT_EQ(lines().size(), 2);
    EXPECT_TRUE(lines()[0].startsWith(QStringLiteral("%1, promised ").arg(second.number)))
        << lines()[0].toStdString();
    EXPECT_TRUE(lines()[0].contains(QStringLiteral("all of it owed")));
    EXPECT_TRUE(lines()[1].startsWith(QStringLiteral("%1, handed over").arg(first.number)));
    EXPECT_TRUE(lines()[1].contains(QStringLiteral(", paid")));
    EXPECT_TRUE(lines()[1].contains(QStringLiteral("2 garments")));
}

TEST_F(CustomerSlips, NameAndNoteAreSavedAtOnce) {
    const auto order = takeOrder({aGarment(m_usual)}, "Anna Reed");
    ASSERT_TRUE(open(SlipName::Customer, ofOrder(order.id)));
    typeText(QStringLiteral("Anna Moss")); // the keyboard is in the name
    type(QStringLiteral("customerNote"), QStringLiteral("rings back in the evening"));
    const auto before = entries();
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), before + 1);
    EXPECT_EQ(pageOf(customerOf(order.id)).note, "rings back in the evening");
    EXPECT_EQ(pageOf(customerOf(order.id)).customer.name, "Anna Moss");
    ASSERT_TRUE(open(SlipName::Customer, ofOrder(order.id)));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), before + 1) << "nothing to write down";
    ASSERT_TRUE(open(SlipName::Customer, ofOrder(order.id)));
    type(QStringLiteral("customerNote"), QString(501, u'n'));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_FALSE(errorAt("customerNote").isEmpty());
}

TEST_F(CustomerSlips, TheOtherIsFoundAndJoined) {
    const auto one = takeOrder({aGarment(m_usual)}, "Anna Reed");
    const auto other = takeOrder({aGarment(m_usual)}, "Ana Rede");
    takeOrder({aGarment(m_usual)}, "Bree Tully");
    ASSERT_TRUE(open(SlipName::Customer, ofOrder(one.id)));
    QTest::mouseClick(find<QAbstractButton>(QStringLiteral("joinCustomer")), Qt::LeftButton);
    ASSERT_EQ(asked, std::vector<SlipName>{SlipName::JoinCustomers});
    ASSERT_TRUE(open(SlipName::JoinCustomers, askedFor));
    const auto before = entries();
    submit();
    EXPECT_EQ(errorAt("other"), QStringLiteral("Choose who it is."));
    type(QStringLiteral("other"), QStringLiteral("zzz"));
    submit();
    EXPECT_EQ(errorAt("other"), QStringLiteral("Nobody else is found so."));
    EXPECT_EQ(entries(), before);
    type(QStringLiteral("other"), QStringLiteral("reed"));
    EXPECT_EQ(find<OptionList>(QStringLiteral("found"))->model()->rowCount(), 0) << "not this one";
    type(QStringLiteral("other"), QStringLiteral("ana"));
    EXPECT_EQ(find<OptionList>(QStringLiteral("found"))->chosenText(), QStringLiteral("Ana Rede"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), before + 1);
    EXPECT_EQ(customerOf(other.id), customerOf(one.id));
    EXPECT_EQ(pageOf(customerOf(one.id)).orders.size(), 2U);
    const auto last = file().lastUndoable();
    ASSERT_TRUE(last && file().undo(last->id).ok());
    EXPECT_NE(customerOf(other.id), customerOf(one.id));
}

TEST_F(CustomerSlips, WhoIsGoneOpensNothing) {
    EXPECT_FALSE(open(SlipName::Customer, ofCustomer(CustomerId{8})));
    EXPECT_FALSE(open(SlipName::JoinCustomers, ofCustomer(CustomerId{8})));
    EXPECT_FALSE(open(SlipName::ForgetCustomer, ofCustomer(CustomerId{8})));
}

// ── the ways there ───────────────────────────────────────────────────────────────────────────────────

class CustomerKeys : public ShopFixture {
protected:
    void openWindow(QSize size = {1024, 600}) {
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window, size);
    }
    void TearDown() override { m_window.reset(); }
    void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        ASSERT_NE(QApplication::focusWidget(), nullptr);
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
        QApplication::processEvents();
    }
    Workshop& workshop() { return *m_window->workshop(); }
    OrdersOfCustomer* lines() { return m_window->findChild<OrdersOfCustomer*>(); }
    std::int64_t orderShown() {
        const auto* sheet = m_window->findChild<OrderSheet*>();
        const auto order = sheet ? sheet->order() : std::nullopt;
        return order ? m_window->desk()->file().connection().number(
                           "SELECT number FROM shop_order WHERE id = " + std::to_string(order->value))
                     : 0;
    }

    UsualShop m_usual = stockUsualShop();
    std::unique_ptr<MainWindow> m_window;
};

// Ctrl+K, the digits, Enter: the page. Enter: the latest order.
TEST_F(CustomerKeys, FromAPhoneNumberToThePageToTheLatestOrder) {
    takeOrder({aGarment(m_usual)}, "Anna Reed");
    const auto latest = takeOrder({aGarment(m_usual)}, "Anna Reed");
    openWindow();
    hit(Qt::Key_K, Qt::ControlModifier);
    typeText(QStringLiteral("07700900418"));
    hit(Qt::Key_Return);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    ASSERT_NE(lines(), nullptr);
    EXPECT_EQ(QApplication::focusWidget(), lines());
    hit(Qt::Key_Return);
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(workshop().current(), PlaceName::OrderBook);
    EXPECT_EQ(orderShown(), latest.number);
}

TEST_F(CustomerKeys, TheFinderKnowsCustomersByNameAndByThatWord) {
    const auto one = takeOrder({aGarment(m_usual)}, "Anna Reed");
    const auto titles = [&](const char* typed) {
        QStringList found;
        for (const FinderEntry& entry : findEntries(desk(), QString::fromUtf8(typed)))
            if (entry.kind == FinderKind::Customer || entry.kind == FinderKind::Order)
                found.append(entry.title);
        return found.join(u'|').toStdString();
    };
    const std::string order = std::to_string(one.number) + "  Anna Reed";
    EXPECT_EQ(titles("anna"), order + "|Anna Reed") << "with one order it comes first";
    EXPECT_EQ(titles("reed customer"), "Anna Reed");
    EXPECT_EQ(titles("heron"), order) << "no name has it in it";
    takeOrder({aGarment(m_usual)}, "Anna Reed");
    EXPECT_TRUE(QString::fromStdString(titles("anna")).startsWith(QStringLiteral("Anna Reed|")));
    EXPECT_TRUE(QString::fromStdString(titles("anan reed")).startsWith(QStringLiteral("Anna Reed|")));
}

TEST_F(CustomerKeys, UOnAnOrderOpensThePageAndTheKeyboardComesBack) {
    const auto order = takeOrder({aGarment(m_usual)}, "Anna Reed");
    openWindow();
    SlipTarget matter;
    matter.order = order.id;
    workshop().turnTo(PlaceName::OrderBook, matter);
    hit(Qt::Key_Return); // into the order
    hit(Qt::Key_U);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    ASSERT_NE(lines(), nullptr);
    hit(Qt::Key_Escape);
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(workshop().current(), PlaceName::OrderBook);
}

// In a small window the page scrolls with the keys, and the line they are on is in view.
TEST_F(CustomerKeys, ManyOrdersScrollWithTheKeys) {
    for (int each = 0; each < 30; ++each)
        takeOrder({aGarment(m_usual)}, "Anna Reed");
    openWindow();
    SlipTarget matter;
    matter.customer = CustomerId{m_window->desk()->file().connection().number("SELECT id FROM customer")};
    workshop().showSlip(SlipName::Customer, matter);
    QTest::qWait(0); // it is laid out
    ASSERT_NE(lines(), nullptr);
    ASSERT_EQ(lines()->partCount(), 30);
    hit(Qt::Key_End);
    const QRect last = lines()->partBox(29);
    EXPECT_TRUE(lines()->visibleRegion().boundingRect().contains(last.center()));
    hit(Qt::Key_Home);
    EXPECT_TRUE(lines()->visibleRegion().boundingRect().contains(lines()->partBox(0).center()));
    hit(Qt::Key_Down);
    hit(Qt::Key_Return);
    EXPECT_EQ(orderShown(),
              m_window->desk()->file().connection().number("SELECT MAX(number) - 1 FROM shop_order"));
}

} // namespace
} // namespace holdfast::app::test

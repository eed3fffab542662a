// SPDX-License-Identifier: GPL-3.0-or-later
// What the customer is told of an order, copied from the order book to be sent; and what else than garments
// is on its bill.

#include "app/places/order_book/order_book_place.h"
#include "core/shop/order_message.h"
#include "db/actions/shop_actions.h"
#include "tests/app/shop_fixture.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QLabel>
#include <QTest>

#include <memory>

namespace holdfast::app::test {

namespace {

class OrderMessage : public ShopFixture {
protected:
    void TearDown() override { m_place.reset(); }

    void openWith(OrderId order) {
        m_place = std::make_unique<OrderBookPlace>(desk());
        showWindow(*m_place, {1270, 708});
        m_place->opened();
        SlipTarget about;
        about.order = order;
        m_place->turnTo(about);
        QCoreApplication::processEvents();
    }
    QString copied() {
        auto* lines = m_place->findChild<QWidget*>(QStringLiteral("garmentLines"));
        lines->setFocus();
        QTest::keyClick(lines, Qt::Key_Y);
        return QGuiApplication::clipboard()->text();
    }

    std::unique_ptr<OrderBookPlace> m_place;
};

} // namespace

TEST_F(OrderMessage, SaysTheDayAndWhatIsOwed) {
    const UsualShop usual = stockUsualShop();
    OrderDraft draft = anOrder({aGarment(usual)});
    draft.garments[0].price = Money{1900};
    const auto taken = valueOf(db::takeOrder(file(), draft, now()));
    openWith(taken.id);
    EXPECT_EQ(copied(),
              QStringLiteral("Your order 1 at Workshop will be ready from %1. £19.00 is still to be paid.")
                  .arg(QString::fromStdString(said("{day}", {{"day", draft.promised}}).english())));
}

TEST_F(OrderMessage, SaysTheNewDayOfAnOrderThatIsLate) {
    const UsualShop usual = stockUsualShop();
    OrderDraft draft = anOrder({aGarment(usual)});
    const auto taken = valueOf(db::takeOrder(file(), draft, now()));
    time().setWall(now().toInstant(draft.promised) + std::chrono::hours{48});
    reopen();
    const std::string message = orderMessage(*desk().shop(), taken.id).english();
    EXPECT_NE(message.find(" as promised. I am sorry."), std::string::npos) << message;
    EXPECT_EQ(message.find("will be ready from"), message.find("will be")) << message;
}

TEST_F(OrderMessage, QuotationIsCalledOneAndOwesNothing) {
    const UsualShop usual = stockUsualShop();
    OrderDraft draft = anOrder({aGarment(usual)});
    draft.isQuotation = true;
    draft.isConfirmed = false;
    draft.deposit = {};
    const auto taken = valueOf(db::takeOrder(file(), draft, now()));
    const std::string message = orderMessage(*desk().shop(), taken.id).english();
    EXPECT_TRUE(message.starts_with("Your quotation 1 at Workshop: it would be ready from ")) << message;
    EXPECT_EQ(message.find("paid"), std::string::npos) << message;
}

TEST_F(OrderMessage, BillIsShownWithTheOrder) {
    const UsualShop usual = stockUsualShop();
    OrderDraft draft = anOrder({aGarment(usual)});
    draft.garments[0].price = Money{2000};
    draft.lines = {{BillLineKind::Extra, "By post", Money{400}},
                   {BillLineKind::Discount, "regular", Percentage{-10'00}}};
    draft.tax = {TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp};
    const auto taken = valueOf(db::takeOrder(file(), draft, now()));
    openWith(taken.id);
    EXPECT_EQ(m_place->findChild<QLabel*>(QStringLiteral("bill"))->text(),
              QStringLiteral("By post 4.00 · Discount 10 %, regular -2.00 · of it Tax 20 % 3.67"));
}

} // namespace holdfast::app::test

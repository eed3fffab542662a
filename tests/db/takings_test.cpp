// SPDX-License-Identifier: GPL-3.0-or-later
// Takings by month out of a shop file: payments with their tax, invoices and credit notes, each on its day.
#include "db/tables/takings.h"

#include "db/actions/invoice_actions.h"
#include "db/tables/figures.h"
#include "db/tables/invoices.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class TakingsOfShop : public SmallShop {
protected:
    TakingsRead read(const std::string& currency = "GBP") {
        UnreadFacts unread;
        TakingsRead takings = readTakingsByMonth(connection(), currency, now(), unread);
        EXPECT_TRUE(unread.empty());
        return takings;
    }
    OrderTaken takeTaxed() {
        OrderDraft draft = aDraft();
        draft.garments[0].price = {60'00};
        draft.tax = {TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp};
        return take(draft);
    }
    void pay(OrderId order, MoneyKind kind, std::int64_t minor, PaidHow how) {
        ASSERT_TRUE(moveMoney(shop(), order, kind, Money{minor}, how).ok());
    }
};

// The tax in what is paid is a sixth of it at 20 % (see tests/core/takings_test.cpp).
TEST_F(TakingsOfShop, MoneyIsOfTheMonthInWhichItMoved) {
    const auto order = takeTaxed().id;
    const auto other = takeTees().id;
    pay(order, MoneyKind::Deposit, 30'00, PaidHow::Card);
    pay(other, MoneyKind::Deposit, 5'00, PaidHow::Cash);
    wait(Days{40});
    pay(order, MoneyKind::Payment, 30'00, PaidHow::Cash);
    pay(order, MoneyKind::Refund, 12'00, PaidHow::Cash);
    const auto lines = takingsLines(read().months);
    ASSERT_EQ(lines.size(), 4U) << "two months of one quarter";
    EXPECT_EQ(lines[0].takings.received(), Money{35'00});
    EXPECT_EQ(lines[0].takings.tax, Money{5'00});
    EXPECT_EQ(lines[1].takings.received(), Money{30'00});
    EXPECT_EQ(lines[1].takings.paidBack(), Money{12'00});
    EXPECT_EQ(lines[1].takings.tax, Money{3'00});
    EXPECT_EQ(lines[3].takings.received(), Money{65'00});
    EXPECT_EQ(lines[3].takings.tax, Money{8'00});
    EXPECT_EQ(loadFigures(connection(), now().today(), now()).takings, read().months)
        << "since the beginning, whatever the span";
}

TEST_F(TakingsOfShop, InvoicesAndCreditNotesAreOfTheirDay) {
    const auto order = takeTaxed().id;
    const auto english = [](const Sentence& words) { return words.english(); };
    ASSERT_TRUE(makeInvoice(shop(), {order, "Odile Farrant", ""}, now(), english).ok());
    wait(Days{40});
    const Invoice invoice = invoicesOf(connection(), order).front();
    ASSERT_TRUE(makeCreditNote(shop(), {invoice.id, {invoice.rows[0].id}, "brought back"}, now()).ok());
    const auto lines = takingsLines(read().months);
    ASSERT_EQ(lines.size(), 4U);
    EXPECT_EQ(lines[0].takings.billed(), invoice.total);
    EXPECT_EQ(lines[0].takings.billedTax(), invoice.taxAmount);
    EXPECT_EQ(lines[1].takings.creditNotes, 1);
    EXPECT_EQ(lines[1].takings.billed(), -invoice.total);
    EXPECT_EQ(lines[3].takings.billed(), Money{});
    EXPECT_EQ(lines[3].takings.billedTax(), Money{});
    EXPECT_EQ(read("NOK").inOtherCurrency, 2);
    EXPECT_TRUE(read("NOK").months.empty());
}

TEST_F(TakingsOfShop, AnOrderThatIsCancelledStillTookItsMoney) {
    const auto order = takeTaxed().id;
    pay(order, MoneyKind::Deposit, 30'00, PaidHow::Card);
    ASSERT_TRUE(cancelOrder(shop(), order, "changed their mind").ok());
    EXPECT_EQ(takingsLines(read().months)[0].takings.received(), Money{30'00});
}

} // namespace
} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/invoicing.h"

#include "core/orders/order_sum.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace holdfast {
namespace {

using Amounts = std::vector<Money>;

TaxRule added(std::int64_t hundredths) {
    return {TaxKind::Added, {hundredths}, TaxedBy::Total, Rounding::HalfUp};
}

Invoice invoiceOf(const Amounts& amounts, const TaxRule& tax) {
    Invoice invoice;
    invoice.id = {1};
    invoice.tax = tax;
    for (std::size_t at = 0; at < amounts.size(); ++at)
        invoice.rows.push_back({{static_cast<std::int64_t>(at) + 10}, {}, "row", amounts[at]});
    const InvoiceSum sum = invoiceSum(amounts, tax);
    invoice.taxAmount = sum.tax;
    invoice.total = sum.total;
    return invoice;
}

Invoice credited(const Invoice& invoice, const std::vector<Invoice>& all,
                 const std::vector<InvoiceRowId>& rows) {
    Invoice note;
    note.id = {static_cast<std::int64_t>(all.size()) + 1};
    note.kind = InvoiceKind::CreditNote;
    note.corrects = invoice.id;
    for (const InvoiceRowId row : rows)
        note.rows.push_back({{row.value + 1000}, row, "row", {}});
    const InvoiceSum sum = creditSum(invoice, all, rows);
    note.taxAmount = sum.tax;
    note.total = sum.total;
    return note;
}

// A published worked example: the basic invoice of OpenPEPPOL's BIS Billing 3.0 (rules/examples/
// base-example.xml, which follows EN 16931-1): rows of 2,800 and -1,500, a charge of 25, tax of 25 %: taxable
// 1,325, tax 331.25, total 1,656.25.
TEST(Invoicing, BasicExampleOfThePublishedBillingSpecification) {
    const InvoiceSum sum = invoiceSum(Amounts{{2800'00}, {-1500'00}, {25'00}}, added(25'00));
    EXPECT_EQ(sum.rows, Money{1325'00});
    EXPECT_EQ(sum.tax, Money{331'25});
    EXPECT_EQ(sum.total, Money{1656'25});
}

// Of the same rows, the charge alone and then the rest: both together are the invoice. By the standard's own
// rule (BR-CO-17: tax is the taxable amount by the rate, to two decimals) 25 % of 25 is 6.25.
TEST(Invoicing, CreditOfARowIsItsAmountWithItsTax) {
    const Invoice invoice = invoiceOf({{2800'00}, {-1500'00}, {25'00}}, added(25'00));
    std::vector<Invoice> all{invoice};
    all.push_back(credited(invoice, all, {{12}}));
    EXPECT_EQ(all.back().taxAmount, Money{6'25});
    EXPECT_EQ(all.back().total, Money{31'25});
    EXPECT_EQ(notCredited(invoice, all).size(), 2U);
    all.push_back(credited(invoice, all, {{10}, {11}}));
    EXPECT_EQ(all.back().total, Money{1625'00});
    EXPECT_TRUE(notCredited(invoice, all).empty());
    EXPECT_EQ(invoiceInForce(all), nullptr);
}

// Three rows of 0.03 at 17.5 %: the tax of all is 0.02 (1.575), of each 0.01 (0.525); by hand. Credited one
// by one the last coin is not credited twice.
TEST(Invoicing, CoinOfTaxIsCreditedOnce) {
    const Invoice invoice = invoiceOf({{3}, {3}, {3}}, added(17'50));
    EXPECT_EQ(invoice.taxAmount, Money{2});
    std::vector<Invoice> all{invoice};
    Money tax;
    for (const std::int64_t row : {10, 11, 12}) {
        all.push_back(credited(invoice, all, {{row}}));
        tax += all.back().taxAmount;
    }
    EXPECT_EQ(tax, Money{2});
}

class RandomBills {
public:
    Amounts prices() {
        Amounts prices;
        for (int garments = from(1, 9); garments > 0; --garments)
            prices.push_back({from(0, 6'000)});
        return prices;
    }
    std::vector<BillLine> lines() {
        std::vector<BillLine> lines;
        for (int count = from(0, 4); count > 0; --count) {
            if (from(0, 1) == 0)
                lines.push_back({BillLineKind::Extra, "x", Money{from(-400, 900)}});
            else
                lines.push_back({BillLineKind::Discount, {}, Percentage{from(-3'000, 3'000)}});
        }
        return lines;
    }
    TaxRule tax() {
        return {static_cast<TaxKind>(from(0, 2)),
                {from(0, 100) * 25},
                static_cast<TaxedBy>(from(0, 1)),
                static_cast<Rounding>(from(0, 1))};
    }
    int from(int low, int high) { return std::uniform_int_distribution<int>{low, high}(m_random); }

private:
    std::mt19937 m_random{19};
};

TEST(Invoicing, RowsAndTaxAddUpToTheOrder) {
    RandomBills random;
    for (int round = 0; round < 20'000; ++round) {
        const Amounts prices = random.prices();
        const std::vector<BillLine> lines = random.lines();
        const TaxRule tax = random.tax();
        const OrderSum order = sumOf(prices, lines, tax);
        Amounts amounts = prices;
        amounts.insert(amounts.end(), order.lines.begin(), order.lines.end());
        const InvoiceSum invoice = invoiceSum(amounts, tax);
        ASSERT_EQ(invoice.total, order.total) << round;
        ASSERT_EQ(invoice.tax, order.tax) << round;
        ASSERT_EQ(invoice.total, tax.kind == TaxKind::Added ? invoice.rows + invoice.tax : invoice.rows);
    }
}

TEST(Invoicing, CreditNotesInAnyPartsAddUpToTheInvoice) {
    RandomBills random;
    for (int round = 0; round < 5'000; ++round) {
        const Invoice invoice = invoiceOf(random.prices(), random.tax());
        std::vector<Invoice> all{invoice};
        Money total;
        Money tax;
        while (!notCredited(invoice, all).empty()) {
            std::vector<InvoiceRowId> rows;
            for (const InvoiceRow& row : notCredited(invoice, all))
                if (random.from(0, 2) == 0)
                    rows.push_back(row.id);
            all.push_back(credited(invoice, all, rows));
            total += all.back().total;
            tax += all.back().taxAmount;
        }
        ASSERT_EQ(total, invoice.total) << round;
        ASSERT_EQ(tax, invoice.taxAmount) << round;
    }
}

TEST(Invoicing, RemarkSaysWhatIsDue) {
    const Currency pounds;
    Order order;
    order.total = {26'50};
    Invoice invoice = invoiceOf({{20'00}, {6'50}}, {});
    EXPECT_TRUE(invoiceRemark(order, {}, pounds).empty());
    EXPECT_TRUE(invoiceRemark(order, std::vector{invoice}, pounds).empty());
    order.total = {20'00};
    EXPECT_EQ(invoiceRemark(order, std::vector{invoice}, pounds),
              "Its invoice asks £6.50 more than the order comes to: a credit note is due.");
    const std::vector<Invoice> both{invoice, credited(invoice, {invoice}, {{11}})};
    EXPECT_TRUE(invoiceRemark(order, both, pounds).empty());
    order.state = OrderState::Cancelled;
    EXPECT_EQ(invoiceRemark(order, both, pounds),
              "Its invoice asks £20.00 more than the order comes to: a credit note is due.");
    order.state = OrderState::Confirmed;
    order.total = {30'00};
    EXPECT_EQ(
        invoiceRemark(order, both, pounds),
        "The order comes to £10.00 more than its invoice asks: a credit note for all of it is due, then "
        "a new invoice.");
    const std::vector<Invoice> none{invoice, credited(invoice, {invoice}, {{10}, {11}})};
    EXPECT_TRUE(invoiceRemark(order, none, pounds).empty()) << "all is credited";
}

TEST(Invoicing, SeriesIsOfOneCopyOfTheShop) {
    EXPECT_EQ(invoiceSeries(1, 0), "1BBB");
    EXPECT_EQ(invoiceSeries(1, 1), "1CBB");
    EXPECT_EQ(invoiceSeries(2, 1), "2CBB");
    EXPECT_EQ(invoiceSeries(2, 19 + 20 * 3 + 400 * 7), "2ZFK");
    EXPECT_EQ(invoiceSeries(2, 8000), "2BBB") << "three letters, then it begins again";
}

TEST(Invoicing, QuotationIsPastItsDayTheDayAfter) {
    Order order;
    order.state = OrderState::Quoted;
    const LocalDate last = localDate(2026, 12, 14);
    EXPECT_FALSE(order.isPastItsDay(last));
    order.validUntil = last;
    EXPECT_FALSE(order.isPastItsDay(last));
    EXPECT_TRUE(order.isPastItsDay(last + Days{1}));
    order.state = OrderState::Confirmed;
    EXPECT_FALSE(order.isPastItsDay(last + Days{1}));
}

} // namespace
} // namespace holdfast

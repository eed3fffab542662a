// SPDX-License-Identifier: GPL-3.0-or-later
// Invoices and credit notes: frozen, numbered without a gap in each copy's series, never undone.
#include "core/orders/invoicing.h"
#include "db/actions/forget_customer.h"
#include "db/actions/invoice_actions.h"
#include "db/tables/invoices.h"
#include "tests/db/exchange_fixture.h"

#include <set>

namespace holdfast::db {
namespace {

class Invoices : public Laptops {
protected:
    using Made = Result<InvoiceId>;

    static std::string english(const Sentence& words) { return words.english(); }

    Made make(Shop& on, OrderId order, const std::string& name = "Odile Farrant") {
        return makeInvoice(on, {order, name, "4 Creek Lane; Saltmarsh"}, now(), english);
    }
    Made credit(Shop& on, const Invoice& invoice, const std::vector<std::size_t>& rows,
                const std::string& reason = "brought back") {
        std::vector<InvoiceRowId> chosen;
        for (const std::size_t row : rows)
            chosen.push_back(invoice.rows.at(row).id);
        return makeCreditNote(on, {invoice.id, chosen, reason}, now());
    }
    static std::vector<Invoice> all(Shop& on, OrderId order) { return invoicesOf(on.connection(), order); }
    Invoice made(Shop& on, OrderId order) {
        const auto outcome = make(on, order);
        EXPECT_TRUE(outcome.ok()) << outcome.error().message.english();
        return all(on, order).back();
    }
    Order orderOf(OrderId order) { return loadFactsOf(connection(), std::span{&order, 1}).orders.at(order); }
    void change(const std::function<void(ShopSettings&)>& how) {
        ShopSettings settings = loadSettings(connection());
        how(settings);
        ASSERT_TRUE(changeSettings(shop(), settings).ok());
    }
    OrderDraft taxedDraft() {
        OrderDraft draft = aDraft(2);
        draft.customerName = "Odile Farrant";
        draft.garments[0].price = {20'00};
        draft.garments[1].price = {10'05};
        draft.garments[0].decals[0].content = Wording{"Juno"};
        draft.lines = {{BillLineKind::Extra, "Gift wrap", Money{2'50}},
                       {BillLineKind::Discount, "regular customer", Percentage{-10'00}}};
        draft.tax = {TaxKind::Added, {20'00}, TaxedBy::Total, Rounding::HalfUp};
        return draft;
    }
};

TEST_F(Invoices, SaysWhatTheOrderSaidAndStaysSo) {
    change([](ShopSettings& settings) {
        settings.shopName = "Løft & Hem";
        settings.address = "The Net Loft; 4 Creek Lane";
        settings.invoiceLines = "Account 00-11; Thank you";
        settings.prices.taxName = "VAT";
        settings.prices.taxNumber = "GB 1234";
    });
    OrderDraft draft = taxedDraft();
    draft.deposit = {5'00};
    const OrderTaken order = take(draft);
    const Invoice invoice = made(shop(), order.id);
    EXPECT_EQ(lastTitle(), "Made invoice " + invoice.label() + " for order 1, £35.45");
    ASSERT_EQ(invoice.rows.size(), 4U);
    EXPECT_NE(invoice.rows[0].words.find("M, Moss, with 1 decal"), std::string::npos)
        << invoice.rows[0].words;
    EXPECT_EQ(invoice.rows[0].words.find("Juno"), std::string::npos) << "a wording may be a name";
    EXPECT_EQ(invoice.rows[2].words, "Gift wrap");
    EXPECT_EQ(invoice.rows[3].amount, Money{-3'01}); // 10 % of 30.05, away from 0
    EXPECT_EQ(invoice.taxAmount, Money{5'91});       // 20 % of 29.54
    EXPECT_EQ(invoice.total, orderOf(order.id).total);
    EXPECT_EQ(invoice.paid, Money{5'00});
    EXPECT_EQ(invoice.madeOn, now().today());

    change([](ShopSettings& settings) {
        settings.shopName = "Another name";
        settings.prices.taxNumber = "";
    });
    const GarmentId second = garmentOf(order, 1);
    ASSERT_TRUE(cancelGarment(shop(), second, "one too many", now()).ok());
    const Invoice later = all(shop(), order.id).front();
    EXPECT_EQ(later.shopName, "Løft & Hem");
    EXPECT_EQ(later.shopAddress, "The Net Loft; 4 Creek Lane");
    EXPECT_EQ(later.taxNumber, "GB 1234");
    EXPECT_EQ(later.rows, invoice.rows);
    EXPECT_EQ(later.total, invoice.total);
    EXPECT_FALSE(invoiceRemark(orderOf(order.id), all(shop(), order.id), later.currency).empty());
    expectWhole(shop());
}

// Council Directive 2006/112/EC, article 226(2): "a sequential number, based on one or more series, which
// uniquely identifies the invoice".
TEST_F(Invoices, NumbersHaveNoGapOverRefusedActions) {
    std::vector<std::int64_t> numbers;
    for (int round = 0; round < 5; ++round) {
        const OrderTaken order = takeTees();
        expectRefused<Made>([&] { return make(shop(), order.id, ""); }, "customerName");
        expectRefused<Made>([&] { return make(shop(), order.id, std::string(81, 'x')); }, "customerName");
        expectRefused<Made>(
            [&] { return makeInvoice(shop(), {order.id, "Odile", std::string(201, 'x')}, now(), english); },
            "customerAddress");
        const Invoice invoice = made(shop(), order.id);
        numbers.push_back(invoice.number);
        expectRefused<Made>([&] { return make(shop(), order.id); }, "", "A credit note for all of it");
        expectRefused<Made>([&] { return credit(shop(), invoice, {}); }, "rows");
        expectRefused<Made>([&] { return credit(shop(), invoice, {0}, "x"); }, "reason");
        ASSERT_TRUE(credit(shop(), invoice, {0}).ok());
        numbers.push_back(all(shop(), order.id).back().number);
        EXPECT_EQ(all(shop(), order.id).back().series, invoice.series) << "of the same kind";
        expectRefused<Made>([&] { return credit(shop(), invoice, {0}); }, "", "credited already");
    }
    // An action that fails after the number was given gives none.
    const OrderTaken last = takeTees();
    const auto failed = shop().asOne([&]() -> Result<Done> {
        EXPECT_TRUE(make(shop(), last.id).ok());
        return plainError(said("no"));
    });
    EXPECT_FALSE(failed.ok());
    numbers.push_back(made(shop(), last.id).number);
    for (std::size_t at = 0; at < numbers.size(); ++at)
        EXPECT_EQ(numbers[at], static_cast<std::int64_t>(at) + 1);
    expectWhole(shop());
}

TEST_F(Invoices, RefusesWhatHasNothingToBeInvoiced) {
    OrderDraft quotation = aDraft();
    quotation.isQuotation = true;
    expectRefused<Made>([&, order = take(quotation)] { return make(shop(), order.id); }, "", "quotation");
    const OrderTaken cancelled = takeTees();
    ASSERT_TRUE(cancelOrder(shop(), cancelled.id, "changed their mind").ok());
    expectRefused<Made>([&] { return make(shop(), cancelled.id); }, "", "cancelled");
    OrderDraft gift = aDraft();
    gift.garments[0].price = {};
    expectRefused<Made>([&, order = take(gift)] { return make(shop(), order.id); }, "", "comes to nothing");
    expectRefused<Made>([&] { return make(shop(), OrderId{12345}); }, "", "no such order");
    expectRefused<Made>([&] { return makeCreditNote(shop(), {InvoiceId{12345}, {}, "why not"}, now()); }, "",
                        "no such invoice");
}

TEST_F(Invoices, CannotBeUndoneNorCanItsOrder) {
    const OrderTaken order = takeTees();
    const EntryId taking = shop().recent(1).front().id;
    const Invoice invoice = made(shop(), order.id);
    const EntryId making = shop().recent(1).front().id;
    EXPECT_FALSE(shop().lastUndoable());
    expectRefused<Result<EntryId>>([&] { return shop().undo(making); }, "",
                                   "An invoice stays as it was made. Make a credit note.");
    expectRefused<Result<EntryId>>([&] { return shop().undo(taking); }, "",
                                   "Invoice " + invoice.label() + " was made of it");
    ASSERT_TRUE(credit(shop(), invoice, {0}).ok());
    expectRefused<Result<EntryId>>([&] { return shop().undo(shop().recent(1).front().id); }, "",
                                   "Make a credit note");
}

TEST_F(Invoices, CreditNotesTakeOffRowsAndNameTheInvoice) {
    const OrderTaken order = take(taxedDraft());
    const Invoice invoice = made(shop(), order.id);
    expectRefused<Made>([&] { return credit(shop(), invoice, {3}); }, "rows", "more than nothing");
    ASSERT_TRUE(credit(shop(), invoice, {1}, "too small").ok());
    Invoice note = all(shop(), order.id).back();
    EXPECT_EQ(note.kind, InvoiceKind::CreditNote);
    EXPECT_EQ(note.corrects, invoice.id);
    EXPECT_EQ(note.reason, "too small");
    EXPECT_EQ(note.total, Money{12'06}); // 10.05 and 20 %
    expectRefused<Made>([&] { return credit(shop(), invoice, {1}); }, "rows", "not credited yet");
    ASSERT_TRUE(credit(shop(), invoice, {0, 2, 3}, "all of it").ok());
    note = all(shop(), order.id).back();
    EXPECT_EQ(note.total, invoice.total - Money{12'06});
    // Then the order can have another one.
    EXPECT_EQ(made(shop(), order.id).number, 4);
    expectWhole(shop());
}

// A discount without the garment that it was for, or a garment that was free, could be credited by nothing.
TEST_F(Invoices, NoRowIsLeftThatCanNeverBeCredited) {
    OrderDraft draft = taxedDraft();
    draft.garments[1].price = {};
    draft.lines.erase(draft.lines.begin());
    const OrderTaken order = take(draft);
    const Invoice invoice = made(shop(), order.id);
    expectRefused<Made>([&] { return credit(shop(), invoice, {0}); }, "rows", "choose the discount, too");
    ASSERT_TRUE(credit(shop(), invoice, {0, 2}).ok());
    EXPECT_EQ(all(shop(), order.id).back().total, invoice.total);
    expectRefused<Made>([&] { return credit(shop(), invoice, {1}); }, "", "credited already");
    EXPECT_TRUE(make(shop(), order.id).ok()) << "the free row keeps no new invoice away";
}

TEST_F(Invoices, TwoLaptopsNeverGiveTheSameNumber) {
    const OrderTaken order = takeTees();
    Laptop& fair = aLaptop();
    const OrderTaken theirs = taken(*fair.shop, aDraft());
    const Invoice here = made(shop(), order.id);
    const Invoice there = made(*fair.shop, theirs.id);
    const Invoice twice = made(*fair.shop, order.id); // of the same order, each by what it knew
    EXPECT_EQ(here.number, 1);
    EXPECT_EQ(there.number, 1);
    EXPECT_NE(here.series, there.series);
    EXPECT_EQ(there.series.front(), '2');
    EXPECT_EQ(twice.number, 2);
    exchange(fair);
    exchange(fair);
    expectSame(shop(), *fair.shop);
    std::set<std::string> labels;
    for (const OrderId each : {order.id, theirs.id})
        for (const Invoice& invoice : all(shop(), each))
            EXPECT_TRUE(labels.insert(invoice.label()).second);
    EXPECT_EQ(labels.size(), 3U);
    const auto both = all(shop(), order.id);
    EXPECT_EQ(invoiceRemark(orderOf(order.id), both, here.currency).english().find("Its invoice asks"), 0U);
    for (Shop* each : {&shop(), fair.shop})
        expectWhole(*each);
}

TEST_F(Invoices, FilePutBackFromABackupBeginsAnotherSeries) {
    Laptop& fair = aLaptop();
    const OrderTaken order = taken(*fair.shop, aDraft());
    const auto backedUp = copyOf(*fair.shop);
    const Invoice lost = made(*fair.shop, order.id);
    const auto again = opened(backedUp);
    EXPECT_NE(made(*again, order.id).label(), lost.label());
}

TEST_F(Invoices, UndoneOnAnotherLaptopTheOrderStaysWithItsInvoice) {
    Laptop& fair = aLaptop();
    const OrderTaken order = taken(*fair.shop, aDraft());
    exchange(fair);
    made(shop(), order.id);
    ASSERT_TRUE(fair.shop->undo(fair.shop->recent(1).front().id).ok());
    const NewsTakenIn brought = bring(fair);
    ASSERT_EQ(brought.differences.size(), 1U);
    EXPECT_TRUE(brought.differences.front().isSetAside);
    EXPECT_NE(brought.differences.front().words.english().find("an invoice stays"), std::string::npos);
    fetch(fair);
    expectSame(shop(), *fair.shop);
    EXPECT_EQ(orderOf(order.id).number, order.number);
}

// The other way about, the invoice is out: it is kept, though its order is gone.
TEST_F(Invoices, OfAnOrderThatWasUndoneInTheWorkshopTheInvoiceIsKept) {
    const OrderTaken order = takeTees();
    Laptop& fair = aLaptop();
    const Invoice invoice = made(*fair.shop, order.id);
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    exchange(fair);
    exchange(fair);
    expectSame(shop(), *fair.shop);
    ASSERT_EQ(all(shop(), order.id).size(), 1U);
    EXPECT_EQ(all(shop(), order.id).front().label(), invoice.label());
    for (Shop* each : {&shop(), fair.shop})
        expectWhole(*each);
}

// General Data Protection Regulation, article 17(3)(b): what a law obliges one to keep is not erased.
TEST_F(Invoices, ForgettingTheCustomerLeavesTheInvoice) {
    OrderDraft draft = aDraft();
    draft.customerName = "Odile Farrant";
    const OrderTaken order = take(draft);
    const Invoice invoice = made(shop(), order.id);
    ASSERT_TRUE(cancelOrder(shop(), order.id, "changed their mind").ok());
    const CustomerId customer{number("SELECT customer_id FROM shop_order")};
    const auto found = toBeForgotten(connection(), customer);
    ASSERT_TRUE(found.ok());
    EXPECT_EQ(found->invoices, std::vector{invoice.label()});
    ASSERT_TRUE(forgetCustomer(shop(), customer).ok());
    EXPECT_EQ(text("SELECT name FROM customer"), "(forgotten)");
    EXPECT_EQ(all(shop(), order.id).front().customerName, "Odile Farrant");
    // What is due is still due.
    const Invoice kept = all(shop(), order.id).front();
    EXPECT_TRUE(credit(shop(), kept, {0}).ok());
    expectWhole(shop());
}

TEST_F(Invoices, RowThatCannotBeReadIsNamed) {
    const OrderTaken order = takeTees();
    made(shop(), order.id);
    {
        UnreadFacts unread;
        noteUnreadInvoices(connection(), unread);
        EXPECT_TRUE(unread.empty());
    }
    connection().script("PRAGMA foreign_keys = OFF");
    const auto path = copyOf(shop());
    Connection file = Connection::open(path, Access::ReadWrite);
    file.run("UPDATE invoice SET made_on = 'soon'");
    UnreadFacts unread;
    noteUnreadInvoices(file, unread);
    ASSERT_EQ(unread.named(file).size(), 1U);
    EXPECT_EQ(unread.named(file).front().why.english(), "An invoice’s day it was made reads “soon”.");
    EXPECT_TRUE(invoicesOf(file, order.id).empty());
}

TEST_F(Invoices, QuotationIsValidAsLongAsTheShopSays) {
    OrderDraft draft = aDraft(2);
    draft.isQuotation = true;
    const OrderTaken usual = take(draft);
    EXPECT_EQ(orderOf(usual.id).validUntil, now().today() + Days{14});
    change([](ShopSettings& settings) { settings.prices.quotationFor = Days{30}; });
    EXPECT_EQ(orderOf(usual.id).validUntil, now().today() + Days{14}) << "what was said stays";
    const OrderTaken later = take(draft);
    EXPECT_EQ(orderOf(later.id).validUntil, now().today() + Days{30});
    EXPECT_FALSE(orderOf(takeTees().id).validUntil);
    const GarmentId one = garmentOf(later);
    const auto split = splitOrder(shop(), later.id, std::span{&one, 1});
    ASSERT_TRUE(split.ok());
    EXPECT_EQ(orderOf(split->id).validUntil, now().today() + Days{30});
    wait(Hours{24} * 60);
    EXPECT_TRUE(orderOf(later.id).isPastItsDay(now().today()));
    EXPECT_TRUE(confirmQuotation(shop(), later.id).ok()) << "it can be confirmed all the same";
    expectRefused<Result<Done>>(
        [&] {
            ShopSettings settings = loadSettings(connection());
            settings.prices.quotationFor = Days{0};
            return changeSettings(shop(), settings);
        },
        "quotationFor");
    expectWhole(shop());
}

} // namespace
} // namespace holdfast::db

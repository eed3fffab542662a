// SPDX-License-Identifier: GPL-3.0-or-later
// Quotation, receipt, invoice and credit note: asked for by keys in the order book, typed into their slips,
// and read back from the PDF.
#include "app/papers/invoice_paper.h"
#include "app/papers/money_paper.h"
#include "app/papers/paper_making.h"
#include "app/papers/quotation_paper.h"
#include "app/places/order_book/order_book_place.h"
#include "app/widgets/button.h"
#include "db/actions/invoice_actions.h"
#include "db/tables/invoices.h"
#include "tests/app/papers_fixture.h"
#include "tests/app/slips_fixture.h"

#include <QLabel>
#include <QTest>

#include <memory>

namespace holdfast::app::test {
namespace {

class MoneyPapers : public PapersFixture {
protected:
    void TearDown() override { m_place.reset(); }

    OrderId takeTwo(const std::function<void(OrderDraft&)>& edit = {}) {
        const UsualShop usual = stockUsualShop();
        OrderDraft draft = anOrder({aGarment(usual), aGarment(usual)}, "Bronagh Tully");
        for (GarmentDraft& garment : draft.garments)
            garment.price = Money{20'00};
        if (edit)
            edit(draft);
        return valueOf(db::takeOrder(file(), draft, now())).id;
    }
    QString textOfErrand(PaperName name, OrderId order, std::optional<InvoiceId> invoice = {}) {
        SlipTarget matter;
        matter.order = order;
        matter.invoice = invoice;
        return textOf(valueOf(valueOf(paperErrand(desk(), name, matter)).papers())).simplified();
    }
    std::string refusal(PaperName name, OrderId order) {
        SlipTarget matter;
        matter.order = order;
        const auto errand = paperErrand(desk(), name, matter);
        return errand.ok() ? std::string{} : errand.error().message.english();
    }

    void openWith(OrderId order) {
        m_place = std::make_unique<OrderBookPlace>(desk());
        showWindow(*m_place, {1270, 708});
        m_place->opened();
        SlipTarget about;
        about.order = order;
        m_place->turnTo(about);
        QCoreApplication::processEvents();
        press(Qt::Key_Return); // out of the search and into the order
        QObject::connect(&desk(), &ShopDesk::paperAsked, m_place.get(),
                         [this](PaperName paper, const SlipTarget&) { m_papers.push_back(paper); });
        QObject::connect(&desk(), &ShopDesk::slipAsked, m_place.get(),
                         [this](SlipName slip, const SlipTarget&) { m_slips.push_back(slip); });
    }
    void press(Qt::Key key) { QTest::keyClick(m_place->window()->focusWidget(), key); }
    QStringList labels() {
        QStringList texts;
        for (const QLabel* label : m_place->findChildren<QLabel*>())
            texts.append(label->text());
        return texts;
    }

    std::unique_ptr<OrderBookPlace> m_place;
    std::vector<PaperName> m_papers;
    std::vector<SlipName> m_slips;
};

void expectAll(const QString& text, const QStringList& parts) {
    for (const QString& part : parts)
        EXPECT_TRUE(text.contains(part)) << part.toStdString() << "\n" << text.toStdString();
}

TEST_F(MoneyPapers, QuotationSaysItsRowsItsTaxAndItsLastDay) {
    change([](ShopSettings& settings) {
        settings.shopName = "Løft & Hem";
        settings.address = "The Net Loft; 4 Creek Lane";
        settings.prices.taxName = "VAT";
        settings.prices.taxNumber = "GB 1234";
        settings.prices.quotationFor = Days{21};
    });
    const OrderId order = takeTwo([](OrderDraft& draft) {
        draft.isQuotation = true;
        draft.lines = {{BillLineKind::Extra, "Gift wrap", Money{2'50}}};
        draft.tax = {TaxKind::Added, {20'00}, TaxedBy::Total, Rounding::HalfUp};
    });
    const LocalDate last = now().today() + Days{21};
    expectAll(textOfErrand(PaperName::Quotation, order),
              {QStringLiteral("Løft & Hem"), QStringLiteral("The Net Loft"), QStringLiteral("4 Creek Lane"),
               QStringLiteral("Tax number GB 1234"), QStringLiteral("Quotation 1"),
               QStringLiteral("Bronagh Tully"), QStringLiteral("2 × Tee, M, Moss, with 1 decal, 20.00 each"),
               QStringLiteral("40.00"), QStringLiteral("Gift wrap"), QStringLiteral("VAT 20 %"),
               QStringLiteral("8.50"), QStringLiteral("£51.00"),
               QStringLiteral("Valid until %1").arg(date(last)), QStringLiteral("not an order yet")});
    EXPECT_EQ(refusal(PaperName::Receipt, order), "Nothing is paid on order 1: there is no receipt.");
    EXPECT_EQ(refusal(PaperName::Invoice, order), "The order has no invoice.");
    time().pass(std::chrono::days{22});
    reopen();
    expectAll(textOfErrand(PaperName::Quotation, order),
              {QStringLiteral("Was valid until %1").arg(date(last))});
}

TEST_F(MoneyPapers, OrderSheetSaysUntilWhenAQuotationIsValid) {
    const OrderId order = takeTwo([](OrderDraft& draft) { draft.isQuotation = true; });
    const QString last = date(now().today() + Days{14});
    openWith(order);
    EXPECT_FALSE(labels().filter(QStringLiteral("valid until %1").arg(last)).isEmpty());
    press(Qt::Key_Q);
    EXPECT_EQ(m_papers, std::vector{PaperName::Quotation});
    press(Qt::Key_I);
    press(Qt::Key_D);
    EXPECT_TRUE(m_slips.empty()) << "a quotation has no invoice";
    m_place.reset();
    time().pass(std::chrono::days{15});
    reopen();
    openWith(order);
    EXPECT_FALSE(
        labels()
            .filter(QStringLiteral("Quoted, was valid until %1: it can still be confirmed").arg(last))
            .isEmpty());
    press(Qt::Key_W);
    EXPECT_EQ(desk().shop()->facts.orders.at(order).state, OrderState::Confirmed);
}

TEST_F(MoneyPapers, ReceiptSaysEachPaymentAndWhatIsOwed) {
    const OrderId order = takeTwo([](OrderDraft& draft) {
        draft.deposit = Money{10'00};
        draft.depositHow = PaidHow::Card;
        draft.tax = {TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp};
    });
    valueOf(db::moveMoney(file(), order, MoneyKind::Payment, {5'00}, PaidHow::Transfer));
    valueOf(db::moveMoney(file(), order, MoneyKind::Payment, {7'00}, PaidHow::Cash));
    valueOf(db::moveMoney(file(), order, MoneyKind::Refund, {2'00}, PaidHow::Cash));
    const QString today = date(now().today());
    expectAll(textOfErrand(PaperName::Receipt, order),
              {QStringLiteral("Receipt, order 1"), QStringLiteral("%1, by card 10.00").arg(today),
               QStringLiteral("%1, by transfer 5.00").arg(today),
               QStringLiteral("%1, in cash 7.00").arg(today),
               QStringLiteral("%1, paid back in cash -2.00").arg(today), QStringLiteral("Received £20.00"),
               QStringLiteral("The order comes to 40.00"), QStringLiteral("of it Tax 20 % 6.67"),
               QStringLiteral("Still to pay £20.00")});
    openWith(order);
    press(Qt::Key_V);
    EXPECT_EQ(m_papers, std::vector{PaperName::Receipt});
}

TEST_F(MoneyPapers, InvoicePrintedAgainIsAsItWasMade) {
    change([](ShopSettings& settings) {
        settings.address = "The Net Loft; 4 Creek Lane";
        settings.invoiceLines = "Account 00-11; Goods stay ours until paid";
    });
    const OrderId order = takeTwo([](OrderDraft& draft) {
        draft.garments[1].price = Money{15'00};
        draft.garments[0].decals[0].content = Wording{"Juno", Face::Plain};
        draft.deposit = Money{5'00};
    });
    openWith(order);
    press(Qt::Key_I);
    ASSERT_EQ(m_slips, std::vector{SlipName::Invoice});
    const InvoiceId made =
        valueOf(db::makeInvoice(file(), {order, "Tully Books", "1 Quay Street; Saltmarsh"}, now(),
                                [](const Sentence& sentence) { return plain(words(sentence)); }));
    const QString before = textOfErrand(PaperName::Invoice, order);
    expectAll(before,
              {QStringLiteral("Invoice 1"), QStringLiteral("The Net Loft"), QStringLiteral("Tully Books"),
               QStringLiteral("1 Quay Street"), QStringLiteral("Order 1"), QStringLiteral("20.00"),
               QStringLiteral("15.00"), QStringLiteral("£35.00"), QStringLiteral("Paid by then 5.00"),
               QStringLiteral("To pay £30.00"), QStringLiteral("Goods stay ours until paid")});
    EXPECT_FALSE(before.contains(QStringLiteral("Juno")));
    press(Qt::Key_I);
    EXPECT_EQ(m_papers, std::vector{PaperName::Invoice}) << "it is printed, not made again";

    valueOf(db::cancelGarment(file(), garmentsOf(order)[1], "one too many", now()));
    change([](ShopSettings& settings) { settings.address = "Elsewhere"; });
    EXPECT_EQ(textOfErrand(PaperName::Invoice, order, made), before);
    QCoreApplication::processEvents();
    const auto* odds = m_place->findChild<QWidget*>(QStringLiteral("orderOdds"));
    EXPECT_FALSE(odds->isHidden());
    EXPECT_TRUE(odds->accessibleName().contains(QStringLiteral("£15.00 more than the order comes to")))
        << odds->accessibleName().toStdString();
    press(Qt::Key_D);
    EXPECT_EQ(m_slips.back(), SlipName::CreditNote);
}

TEST_F(MoneyPapers, ManyRowsGoOnOnFurtherPages) {
    const UsualShop usual = stockUsualShop();
    auto garments = manyGarments(usual, 120);
    for (std::size_t at = 0; at < garments.size(); ++at)
        garments[at].price = Money{1000 + static_cast<std::int64_t>(at)};
    auto draft = anOrder(garments);
    draft.isQuotation = true;
    const OrderId order = valueOf(db::takeOrder(file(), draft, now())).id;
    const auto papers = quotationPapers(shop(), order);
    ASSERT_GT(papers.size(), 2U);
    const QString text = textOf(papers);
    EXPECT_TRUE(text.contains(QStringLiteral("page 3 of")));
    for (std::size_t at = 0; at < garments.size(); ++at)
        EXPECT_TRUE(text.contains(moneyBare(garments[at].price, shop().facts.settings.currency))) << at;
    for (const Paper& paper : papers)
        EXPECT_TRUE(staysOnPaper(paper));
}

TEST_F(MoneyPapers, LongNamesStayOnThePaper) {
    Invoice invoice;
    invoice.series = "1KFT";
    invoice.number = 123456;
    invoice.orderNumber = 99999;
    invoice.shopName = std::string(60, 'W');
    invoice.shopAddress = std::string(200, 'W');
    invoice.customerName = std::string(80, 'W');
    invoice.customerAddress = std::string(100, 'W') + "; " + std::string(90, 'm');
    invoice.shopLines = std::string(400, 'W');
    invoice.rows = {{{1}, {}, std::string(200, 'W'), Money{999'999'999'99}}};
    invoice.total = Money{999'999'999'99};
    const auto papers = invoicePapers(invoice, {});
    for (const Paper& paper : papers)
        EXPECT_TRUE(staysOnPaper(paper));
    EXPECT_TRUE(isOfSize(pagesOf(pdfOf(papers)).front(), 210, 279)); // as wide as A4, as high as Letter
}

class InvoiceSlips : public SlipsFixture {
protected:
    SlipTarget about(OrderId order) {
        SlipTarget matter;
        matter.order = order;
        return matter;
    }
    std::vector<Invoice> invoices(OrderId order) {
        return valueOf(
            file().read([&](db::Connection& connection) { return db::invoicesOf(connection, order); }));
    }
    void listen() {
        QObject::connect(&desk(), &ShopDesk::paperAsked, &desk(),
                         [this](PaperName paper, const SlipTarget& matter) {
                             EXPECT_EQ(paper, PaperName::Invoice);
                             m_printed.push_back(matter.invoice.value_or(InvoiceId{}));
                         });
    }

    std::vector<InvoiceId> m_printed;
};

TEST_F(InvoiceSlips, InvoiceIsMadeAndPrintedByKeys) {
    listen();
    const UsualShop usual = stockUsualShop();
    const OrderId order = takeOrder({aGarment(usual), aGarment(usual)}).id;
    open(SlipName::Invoice, about(order));
    typeText(QStringLiteral("4 Creek Lane; Saltmarsh"));
    submit();
    ASSERT_TRUE(isFinished());
    ASSERT_EQ(invoices(order).size(), 1U);
    const Invoice invoice = invoices(order).front();
    EXPECT_EQ(invoice.customerName, "Odile Farrant");
    EXPECT_EQ(invoice.customerAddress, "4 Creek Lane; Saltmarsh");
    EXPECT_EQ(invoice.rows.size(), 2U);
    EXPECT_EQ(m_printed, std::vector{invoice.id});

    open(SlipName::CreditNote, about(order));
    submit();
    EXPECT_FALSE(isFinished()) << "the reason is missing";
    EXPECT_FALSE(errorAt("reason").isEmpty());
    type(QStringLiteral("reason"), QStringLiteral("one came back"));
    turn(QStringLiteral("row-1"));
    EXPECT_TRUE(find<QLabel>(QStringLiteral("credited"))
                    ->text()
                    .contains(money(invoice.rows[1].amount, invoice.currency)));
    submit();
    ASSERT_TRUE(isFinished());
    ASSERT_EQ(invoices(order).size(), 2U);
    const Invoice note = invoices(order).back();
    EXPECT_EQ(note.total, invoice.rows[1].amount);
    EXPECT_EQ(note.rows.front().credits, invoice.rows[1].id);
    EXPECT_EQ(m_printed.back(), note.id);
    const auto papers = invoicePapers(note, invoices(order));
    EXPECT_EQ(papers.front().name, QStringLiteral("credit-note-%1").arg(words(note.label())));

    // What is left, and then there is nothing more to be credited; each can be printed again.
    open(SlipName::CreditNote, about(order));
    type(QStringLiteral("reason"), QStringLiteral("the other, too"));
    submit();
    ASSERT_TRUE(isFinished());
    open(SlipName::CreditNote, about(order));
    EXPECT_EQ(find<Button>(QStringLiteral("row-1")), nullptr);
    auto* again = find<Button>(QStringLiteral("print-%1").arg(words(invoice.label())));
    ASSERT_NE(again, nullptr);
    again->click();
    EXPECT_EQ(m_printed.back(), invoice.id);
}

TEST_F(InvoiceSlips, RefusalsAreSaidAtTheirFields) {
    const UsualShop usual = stockUsualShop();
    const OrderId order = takeOrder({aGarment(usual)}).id;
    const auto before = entries();
    open(SlipName::Invoice, about(order));
    type(QStringLiteral("customerName"), QString(81, u'x'));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_FALSE(errorAt("customerName").isEmpty());
    EXPECT_EQ(entries(), before);
    type(QStringLiteral("customerName"), QStringLiteral("Odile"));
    submit();
    ASSERT_TRUE(isFinished());
    open(SlipName::CreditNote, about(order));
    type(QStringLiteral("reason"), QStringLiteral("came back"));
    turn(QStringLiteral("row-1"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_TRUE(errorAt("row-1").contains(QStringLiteral("Choose rows of invoice")))
        << errorAt("row-1").toStdString();
}

TEST_F(InvoiceSlips, ShopsOwnLinesAndTheDaysOfAQuotationAreSaved) {
    SlipTarget shop;
    shop.settings = SettingsPart::Shop;
    open(SlipName::Settings, shop);
    type(QStringLiteral("address"), QStringLiteral("The Net Loft; 4 Creek Lane"));
    type(QStringLiteral("invoiceLines"), QStringLiteral("Account 00-11"));
    submit();
    ASSERT_TRUE(isFinished());
    SlipTarget bill;
    bill.settings = SettingsPart::Bill;
    open(SlipName::Settings, bill);
    type(QStringLiteral("quotationFor"), QStringLiteral("0"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_FALSE(errorAt("quotationFor").isEmpty());
    type(QStringLiteral("quotationFor"), QStringLiteral("30"));
    submit();
    ASSERT_TRUE(isFinished());
    const ShopSettings& settings = desk().shop()->facts.settings;
    EXPECT_EQ(settings.address, "The Net Loft; 4 Creek Lane");
    EXPECT_EQ(settings.invoiceLines, "Account 00-11");
    EXPECT_EQ(settings.prices.quotationFor, Days{30});
    EXPECT_EQ(typedLines(settings.address),
              (QStringList{QStringLiteral("The Net Loft"), QStringLiteral("4 Creek Lane")}));
}

TEST_F(InvoiceSlips, FormThatForgetsNamesTheInvoicesThatStay) {
    const UsualShop usual = stockUsualShop();
    const OrderId order = takeOrder({aGarment(usual)}).id;
    open(SlipName::Invoice, about(order));
    submit();
    ASSERT_TRUE(isFinished());
    valueOf(db::cancelOrder(file(), order, "moved away"));
    open(SlipName::ForgetCustomer, about(order));
    QString told;
    for (const QLabel* label : slip().findChildren<QLabel*>())
        told += label->text() + u'\n';
    EXPECT_TRUE(told.contains(words(invoices(order).front().label()))) << told.toStdString();
}

} // namespace
} // namespace holdfast::app::test

// SPDX-License-Identifier: GPL-3.0-or-later
// An invoice is made; a credit note corrects it, whole or in part. Either is printed at once, and again from
// here.
#include "app/desk/formats.h"
#include "app/desk/invoice_words.h"
#include "app/slips/form_slip.h"
#include "app/slips/slip_makers.h"
#include "app/slips/slip_words.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/long_field.h"
#include "app/widgets/switch.h"
#include "core/orders/invoicing.h"
#include "db/actions/invoice_actions.h"
#include "db/tables/invoices.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

SlipTarget paperOf(const Invoice& invoice) {
    SlipTarget matter;
    matter.order = invoice.order;
    matter.invoice = invoice.id;
    return matter;
}

std::vector<Invoice> invoicesIn(ShopDesk& desk, OrderId order) {
    const auto all =
        desk.file().read([&](db::Connection& connection) { return db::invoicesOf(connection, order); });
    return desk.done(all) ? *all : std::vector<Invoice>{};
}

class InvoiceSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(InvoiceSlip)

public:
    InvoiceSlip(ShopDesk& shopDesk, const OrderInView& inView, const std::vector<Invoice>& before,
                QWidget* parent)
        : FormSlip(shopDesk, tr("Make an invoice"), orderWords(inView), parent)
        , m_order(inView.order.id) {
        form().note(
            tr("Of all that the order comes to now: %1. It cannot be undone or changed; a credit note "
               "corrects it.")
                .arg(money(inView.order.total, inView.settings.currency)));
        form().line("customerName", tr("Customer"), words(inView.customer.name));
        form()
            .longLine("customerAddress", tr("Address, semicolons between lines"),
                      before.empty() ? QString() : words(before.back().customerAddress))
            ->setPlaceholder(tr("e.g. 4 Creek Lane; Saltmarsh"));
        form().optional("customerAddress");
        if (inView.settings.address.empty())
            form().note(tr("The shop has no address to print yet: Back room, The shop."));
        form().note(
            tr("What an invoice must say, and whether you owe the customer one, is for local law: ask "
               "a tax adviser."));
        beginAt("customerAddress");
        setAction(tr("Make the invoice"));
    }

protected:
    void act() override {
        const db::InvoiceAsked asked{m_order, plain(form().text("customerName")),
                                     plain(form().text("customerAddress"))};
        ShopDesk& shopDesk = desk();
        const auto made = db::makeInvoice(shopDesk.file(), asked, shopDesk.now(),
                                          [](const Sentence& sentence) { return plain(words(sentence)); });
        SlipTarget matter;
        matter.order = m_order;
        if (made.ok())
            matter.invoice = *made;
        if (settle(made))
            emit shopDesk.paperAsked(PaperName::Invoice, matter);
    }

private:
    OrderId m_order;
};

std::string rowName(std::size_t at) {
    return "row-" + std::to_string(at + 1);
}

class CreditNoteSlip : public FormSlip {
    Q_DECLARE_TR_FUNCTIONS(CreditNoteSlip)

public:
    CreditNoteSlip(ShopDesk& shopDesk, const OrderInView& inView, const std::vector<Invoice>& all,
                   QWidget* parent)
        : FormSlip(shopDesk, tr("Credit note"), orderWords(inView), parent) {
        if (const Invoice* invoice = invoiceInForce(all)) {
            m_invoice = *invoice;
            m_rows = notCredited(*invoice, all);
            askWhatIsCredited(all);
        } else {
            form().note(tr("All of its invoices are credited."));
            action()->setEnabled(false);
        }
        form().section(tr("Print again"));
        for (const Invoice& each : all) {
            auto* print = new Button(tr("Print %1").arg(invoiceTitle(each)), Button::Kind::Plain);
            print->setObjectName(QStringLiteral("print-%1").arg(words(each.label())));
            QObject::connect(print, &Button::clicked, this, [this, matter = paperOf(each)] {
                emit desk().paperAsked(PaperName::Invoice, matter);
            });
            form().add(print);
        }
        setAction(tr("Make the credit note"));
    }

protected:
    void act() override {
        if (!m_invoice)
            return;
        db::CreditAsked asked{m_invoice->id, chosen(), plain(form().text("reason"))};
        ShopDesk& shopDesk = desk();
        SlipTarget matter = paperOf(*m_invoice);
        const auto made = db::makeCreditNote(shopDesk.file(), asked, shopDesk.now());
        if (made.ok())
            matter.invoice = *made;
        if (settle(made))
            emit shopDesk.paperAsked(PaperName::Invoice, matter);
    }

private:
    void askWhatIsCredited(const std::vector<Invoice>& all) {
        form().note(tr("Of %1. Switch off what is not to be credited; it cannot be undone.")
                        .arg(invoiceTitle(*m_invoice)));
        form().longLine("reason", tr("Reason"))->setPlaceholder(tr("e.g. one of them came back"));
        for (std::size_t at = 0; at < m_rows.size(); ++at)
            form().turn(
                rowName(at),
                tr("%1, %2").arg(words(m_rows[at].words), money(m_rows[at].amount, m_invoice->currency)),
                true);
        form().alsoNamed("rows", rowName(0));
        m_sum = form().note({});
        m_sum->setObjectName(QStringLiteral("credited"));
        QObject::connect(&form(), &Form::edited, this, [this, all] { saySum(all); });
        saySum(all);
        beginAt("reason");
    }

    std::vector<InvoiceRowId> chosen() const {
        std::vector<InvoiceRowId> rows;
        for (std::size_t at = 0; at < m_rows.size(); ++at)
            if (form().isOn(rowName(at)))
                rows.push_back(m_rows[at].id);
        return rows;
    }

    void saySum(const std::vector<Invoice>& all) {
        const InvoiceSum sum = creditSum(*m_invoice, all, chosen());
        const QString total = money(sum.total, m_invoice->currency);
        m_sum->setText(m_invoice->tax.kind == TaxKind::None
                           ? tr("Credited: %1.").arg(total)
                           : tr("Credited: %1, of it %2 %3.")
                                 .arg(total, words(taxWords(m_invoice->tax, m_invoice->taxName)),
                                      money(sum.tax, m_invoice->currency)));
    }

    std::optional<Invoice> m_invoice; // that can be corrected
    std::vector<InvoiceRow> m_rows;   // of it, not credited yet
    Label* m_sum = nullptr;
};

} // namespace

Slip* makeInvoiceSlip(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    return inView ? new InvoiceSlip(desk, *inView, invoicesIn(desk, inView->order.id), parent) : nullptr;
}

Slip* makeCreditNoteSlip(ShopDesk& desk, const SlipTarget& matter, QWidget* parent) {
    const auto inView = orderIn(desk, matter);
    return inView ? new CreditNoteSlip(desk, *inView, invoicesIn(desk, inView->order.id), parent) : nullptr;
}

} // namespace holdfast::app

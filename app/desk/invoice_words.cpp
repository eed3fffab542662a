// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/invoice_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct InvoiceTitle {
    Q_DECLARE_TR_FUNCTIONS(InvoiceTitle)
};

} // namespace

QString invoiceTitle(const Invoice& invoice) {
    const QString number = words(invoice.label());
    return invoice.kind == InvoiceKind::CreditNote ? InvoiceTitle::tr("Credit note %1").arg(number)
                                                   : InvoiceTitle::tr("Invoice %1").arg(number);
}

} // namespace holdfast::app

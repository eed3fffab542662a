// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What an invoice or a credit note is called.

#include "core/facts/invoice.h"

#include <QString>

namespace holdfast::app {

// "Invoice 1KFT-3", "Credit note 1KFT-4".
QString invoiceTitle(const Invoice& invoice);

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The currency of where this computer is, and how a currency is written.

#include "core/trade/money.h"

#include <QString>

namespace holdfast::app {

QString localCurrencyCode(); // "GBP"

// With the sign that the places use which have it, else its code; what is no code stays as it was typed, for
// the shop to refuse.
Currency currencyOfCode(const QString& code);

} // namespace holdfast::app

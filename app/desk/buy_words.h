// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is said of a line of what to buy: on its sheet, on paper and in the report.

#include "core/stock/what_to_buy.h"

#include <QCoreApplication>
#include <QString>

namespace holdfast::app {

class BuyWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BuyWords)

public:
    // "3 m", or "4".
    static QString amount(const ToBuy& line, std::int64_t amount);
    // Until more arrives, in eight of ten cases: "0.4 m to 2.1 m"; a dash where nobody knows.
    static QString useRange(const ToBuy& line);
    // Why it is bought, or why nobody can say; empty: there is enough.
    static QString reason(const ToBuy& line, const std::optional<Fair>& fair);
    static QString supplier(const std::string& supplier); // "Supplier not written down"
    // "12 blanks and 3 m of film"; of what is bought.
    static QString amounts(const WhatToBuy& what);
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is said of takings by month: on their sheet of Figures, on paper and in the report.

#include "core/orders/takings.h"

#include <QCoreApplication>
#include <QString>

namespace holdfast::app {

class TakingsWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::TakingsWords)

public:
    static QString span(const TakingsLine& line); // "Nov 2026", "Quarter 4 of 2026", "Year 2026"
    // "Cash £48.00, card £60.00"; ways by which nothing moved are left out.
    static QString ways(const DayMoney& money, const Currency& currency);
    static QString papers(const Takings& takings); // "2 invoices, 1 credit note"; empty: none
    // What to beware of.
    static QString note(std::int64_t inOtherCurrency);
};

} // namespace holdfast::app

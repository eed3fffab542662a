// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The sheet of what to buy, by supplier.

#include "app/places/figures/figure_sheet.h"

#include <QCoreApplication>

namespace holdfast::app {

class BuySheet {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::BuySheet)

public:
    explicit BuySheet(const FiguresShown& shown)
        : m_shown(shown)
        , m_buy(shown.buy) {}

    // Fills a sheet that has its question, or leaves it as it is where there is nothing yet.
    void fill(FigureSheet& sheet) const;

private:
    void addLines(FigureSheet& sheet) const;
    QString note() const;

    const FiguresShown& m_shown;
    const WhatToBuy& m_buy;
};

} // namespace holdfast::app

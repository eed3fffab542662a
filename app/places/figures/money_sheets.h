// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Sheets of money: what was counted in the till.

#include "app/places/figures/figure_sheet.h"

#include <QCoreApplication>

namespace holdfast::app {

// Each fills a sheet that has its question, or leaves it as it is where there is nothing yet.
class MoneySheets {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::MoneySheets)

public:
    explicit MoneySheets(const FiguresShown& shown)
        : m_shown(shown)
        , m_figures(shown.figures) {}

    void till(FigureSheet& sheet) const;

private:
    const FiguresShown& m_shown;
    const ShopFigures& m_figures;
};

} // namespace holdfast::app

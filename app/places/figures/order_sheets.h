// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Sheets of orders and of film: promises kept, where orders were taken, where the film went.

#include "app/places/figures/figure_sheet.h"

#include <QCoreApplication>

namespace holdfast::app {

// Each fills a sheet that has its question, or leaves it as it is where there is nothing yet.
class OrderSheets {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::OrderSheets)

public:
    explicit OrderSheets(const FiguresShown& shown)
        : m_shown(shown)
        , m_figures(shown.figures) {}

    void promises(FigureSheet& sheet) const;
    void takings(FigureSheet& sheet) const;
    void film(FigureSheet& sheet) const;

private:
    const FiguresShown& m_shown;
    const ShopFigures& m_figures;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Sheets of what came back: faults, what they have in common, how long decals hold, months.

#include "app/places/figures/figure_sheet.h"

#include <QCoreApplication>

namespace holdfast::app {

// Each fills a sheet that has its question, or leaves it as it is where there is nothing yet.
class FaultSheets {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FaultSheets)

public:
    explicit FaultSheets(const FiguresShown& shown)
        : m_shown(shown)
        , m_figures(shown.figures) {}

    void cameBack(FigureSheet& sheet) const;
    void whatIsCommon(FigureSheet& sheet) const;
    void holding(FigureSheet& sheet) const;
    void months(FigureSheet& sheet) const;

private:
    QString sentence(const QString& counts, const FaultShare& all) const;
    QString byWords() const;

    const FiguresShown& m_shown;
    const ShopFigures& m_figures;
};

} // namespace holdfast::app

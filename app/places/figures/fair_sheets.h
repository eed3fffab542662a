// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Sheets of fairs: what each earned, what to bring to the next.

#include "app/places/figures/figure_sheet.h"

#include <QCoreApplication>

namespace holdfast::app {

// Each fills a sheet that has its question, or leaves it as it is where there is nothing yet.
class FairSheets {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FairSheets)

public:
    explicit FairSheets(const FiguresShown& shown)
        : m_shown(shown)
        , m_figures(shown.figures) {}

    void earned(FigureSheet& sheet) const;
    void bring(FigureSheet& sheet) const;

private:
    QString earnedNote() const;
    QString bringSentence() const;
    QString bringNote() const;
    QString occasion() const;

    const FiguresShown& m_shown;
    const ShopFigures& m_figures;
};

} // namespace holdfast::app

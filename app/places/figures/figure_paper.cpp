// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/figure_paper.h"

#include "app/desk/formats.h"
#include "app/papers/list_paper.h"
#include "app/places/figures/paper_charts.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct FigurePaper {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FigurePaper)
};

std::optional<ListBar> barOf(const FigureRow& row, double most) {
    if (!row.bar || most <= 0)
        return std::nullopt;
    const auto share = [&](std::optional<double> length) {
        return length ? std::optional{*length / most} : std::nullopt;
    };
    return ListBar{row.bar->length / most, row.bar->hatched / most, share(row.bar->low),
                   share(row.bar->high)};
}

std::optional<PageBlock> chartOf(const FigureSheet& sheet, const ShopFigures& figures) {
    switch (sheet.chart) {
    case FigureChart::Holding:
        return holdingOnPaper(figures.withoutFault);
    case FigureChart::Months:
        return monthsOnPaper(figures.months);
    case FigureChart::Bars:
        break;
    }
    return std::nullopt;
}

ListSection sectionOf(const FigureSheet& sheet, const ShopFigures& figures) {
    ListSection section{sheet.title.isEmpty() ? sheet.question : sheet.title, {}, {}};
    if (sheet.rows.isEmpty() && sheet.whole.isEmpty()) {
        section.above = sheet.empty;
        return section;
    }
    section.nameHead = sheet.nameHead;
    section.heads = sheet.heads;
    section.above = sheet.whole;
    section.chart = chartOf(sheet, figures);
    section.note = sheet.note;
    for (const FigureRow& row : sheet.rows)
        section.rows.push_back({row.name, row.cells, row.remark, barOf(row, sheet.most)});
    return section;
}

} // namespace

std::vector<Paper> figurePapers(FiguresShown shown) {
    PaperList list;
    list.name = QStringLiteral("figures");
    list.head.title = FigurePaper::tr("Figures since %1").arg(date(shown.figures.from));
    list.head.under = words(shown.settings.shopName);
    list.hasBoxes = false;
    for (int at = 0; at < kFigureQuestions; ++at) {
        const auto question = static_cast<FigureQuestion>(at);
        if (question != FigureQuestion::WhatIsCommon) {
            list.sections.push_back(sectionOf(figureSheet(question, shown), shown.figures));
            continue;
        }
        for (const FaultsBy by : kAllFaultsBy) {
            shown.by = by;
            list.sections.push_back(sectionOf(figureSheet(question, shown), shown.figures));
        }
    }
    return listPaper(list);
}

} // namespace holdfast::app

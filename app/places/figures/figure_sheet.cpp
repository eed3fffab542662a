// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/figure_sheet.h"

#include "app/places/figures/buy_sheet.h"
#include "app/places/figures/fair_sheets.h"
#include "app/places/figures/fault_sheets.h"
#include "app/places/figures/money_sheets.h"
#include "app/places/figures/order_sheets.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

// What is said of a question whatever the figures are.
struct Asked {
    const char* question;
    const char* empty;
    FigureChart chart = FigureChart::Bars;
};

Asked asked(FigureQuestion question) {
    switch (question) {
    case FigureQuestion::CameBack:
        return {QT_TRANSLATE_NOOP("FigureSheet", "What came back?"),
                QT_TRANSLATE_NOOP("FigureSheet",
                                  "What customers bring back is shown here once garments are handed over.")};
    case FigureQuestion::WhatIsCommon:
        return {
            QT_TRANSLATE_NOOP("FigureSheet", "What do they have in common?"),
            QT_TRANSLATE_NOOP("FigureSheet",
                              "Films, rolls and presses are compared here once garments are handed over.")};
    case FigureQuestion::Holding:
        return {
            QT_TRANSLATE_NOOP("FigureSheet", "How long do decals last?"),
            QT_TRANSLATE_NOOP("FigureSheet",
                              "The share still without a fault is shown here once garments are handed over."),
            FigureChart::Holding};
    case FigureQuestion::Months:
        return {QT_TRANSLATE_NOOP("FigureSheet", "Is a month unusual?"),
                QT_TRANSLATE_NOOP("FigureSheet", "Months are compared here once garments are handed over."),
                FigureChart::Months};
    case FigureQuestion::Promises:
        return {QT_TRANSLATE_NOOP("FigureSheet", "Were promises kept?"),
                QT_TRANSLATE_NOOP("FigureSheet", "Promises are shown here once the first is due.")};
    case FigureQuestion::Takings:
        return {QT_TRANSLATE_NOOP("FigureSheet", "Where were orders taken?"),
                QT_TRANSLATE_NOOP("FigureSheet",
                                  "Fairs and the workshop are compared here once orders are taken.")};
    case FigureQuestion::Earned:
        return {QT_TRANSLATE_NOOP("FigureSheet", "What did each fair earn?"),
                QT_TRANSLATE_NOOP(
                    "FigureSheet",
                    "What each fair earned is shown here once one is listed or an order was taken at one.")};
    case FigureQuestion::Bring:
        return {QT_TRANSLATE_NOOP("FigureSheet", "What to bring to the next fair?"),
                QT_TRANSLATE_NOOP(
                    "FigureSheet",
                    "Blanks to bring are shown here after the first fair day on which orders were taken.")};
    case FigureQuestion::Buy:
        return {QT_TRANSLATE_NOOP("FigureSheet", "What to buy now?"),
                QT_TRANSLATE_NOOP("FigureSheet",
                                  "What to buy is shown here once a film is added or orders are taken.")};
    case FigureQuestion::Till:
        return {QT_TRANSLATE_NOOP("FigureSheet", "Was the till right?"),
                QT_TRANSLATE_NOOP("FigureSheet", "What was counted is shown here once the till is counted.")};
    case FigureQuestion::Film:
        return {QT_TRANSLATE_NOOP("FigureSheet", "Where did the film go?"),
                QT_TRANSLATE_NOOP("FigureSheet", "Films are shown here once a roll is received.")};
    }
    return {};
}

void fill(FigureSheet& sheet, FigureQuestion question, const FiguresShown& shown) {
    switch (question) {
    case FigureQuestion::CameBack:
        return FaultSheets{shown}.cameBack(sheet);
    case FigureQuestion::WhatIsCommon:
        return FaultSheets{shown}.whatIsCommon(sheet);
    case FigureQuestion::Holding:
        return FaultSheets{shown}.holding(sheet);
    case FigureQuestion::Months:
        return FaultSheets{shown}.months(sheet);
    case FigureQuestion::Promises:
        return OrderSheets{shown}.promises(sheet);
    case FigureQuestion::Takings:
        return OrderSheets{shown}.takings(sheet);
    case FigureQuestion::Earned:
        return FairSheets{shown}.earned(sheet);
    case FigureQuestion::Bring:
        return FairSheets{shown}.bring(sheet);
    case FigureQuestion::Buy:
        return BuySheet{shown}.fill(sheet);
    case FigureQuestion::Till:
        return MoneySheets{shown}.till(sheet);
    case FigureQuestion::Film:
        return OrderSheets{shown}.film(sheet);
    }
}

} // namespace

FiguresShown figuresShown(const ReckonedShop& shop, const ShopFigures& figures, FaultsBy by) {
    return {figures,
            whatToBuy(shop, figures.blankUse, figures.nextFair, figures.bring),
            shop.facts.settings,
            by,
            shop.now.today(),
            shop.facts.settings.currency};
}

FigureSheet figureSheet(FigureQuestion question, const FiguresShown& shown) {
    const auto said = [](const char* text) { return QCoreApplication::translate("FigureSheet", text); };
    const Asked of = asked(question);
    FigureSheet sheet;
    sheet.question = said(of.question);
    sheet.empty = said(of.empty);
    sheet.chart = of.chart;
    fill(sheet, question, shown);
    return sheet;
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One figure of the shop: a question in words, what it comes to in a sentence, its rows, and what to beware
// of.

#include "app/desk/shop_desk.h"
#include "core/facts/settings.h"
#include "core/quality/shop_figures.h"
#include "core/trade/enumerators.h"
#include "core/trade/money.h"

#include <QString>
#include <QStringList>
#include <QVector>

#include <optional>
#include <vector>

namespace holdfast::app {

// A length on the scale of its sheet, from nothing to its largest.
struct FigureBar {
    double length = 0;
    std::optional<double> low; // the true one may well lie from here to `high`
    std::optional<double> high;
    double hatched = 0; // of the length, at its end
};

struct FigureRow {
    QString name;
    std::optional<FigureBar> bar;
    QStringList cells; // one for each head
    QString remark;    // after the name: "more than chance"
};

enum class FigureChart { Bars, Holding, Months };

struct FigureSheet {
    QString question;
    QString title;  // over the sheet, where it says more than the question
    QString answer; // a few words, for the list of questions
    QString whole;  // the sentence above the chart
    FigureChart chart = FigureChart::Bars;
    QString nameHead;
    QStringList heads;
    QVector<FigureRow> rows;
    QString note;    // small numbers, and what is not known
    QString empty;   // instead of all of it, where there is nothing yet
    double most = 0; // the scale's end; with bars
};

inline constexpr int kFigureQuestions = static_cast<int>(enumeratorCount<FigureQuestion>());

// All that a sheet is made from.
struct FiguresShown {
    ShopFigures figures;
    WhatToBuy buy;
    ShopSettings settings;
    FaultsBy by = FaultsBy::Film;
    LocalDate today{};
    Currency currency;
};

// REQUIRES: read of that shop.
FiguresShown figuresShown(const ReckonedShop& shop, const ShopFigures& figures, FaultsBy by = FaultsBy::Film);

FigureSheet figureSheet(FigureQuestion question, const FiguresShown& shown);

} // namespace holdfast::app

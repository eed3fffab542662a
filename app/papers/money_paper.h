// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The sheet that quotations, receipts, invoices and credit notes share: as wide as A4 and as high as Letter,
// on as many pages as its rows need.

#include "app/papers/paper.h"

#include <QStringList>

#include <vector>

namespace holdfast::app {

struct MoneyLine {
    QString words;
    QString amount;
    bool isStrong = false;
};

struct MoneyPaper {
    QString name;     // of its file
    QStringList shop; // its name, then lines
    QString title;    // "Invoice 1KFT-3"
    QStringList facts;
    QStringList customer; // the name, then lines
    std::vector<MoneyLine> rows;
    std::vector<MoneyLine> sums;
    QStringList notes;
    QStringList foot; // the shop's own lines
};

std::vector<Paper> moneyPages(const MoneyPaper& paper);

// "The Net Loft; 4 Creek Lane" as lines.
QStringList typedLines(const std::string& text);

} // namespace holdfast::app

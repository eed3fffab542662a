// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A list on paper, for A4 and Letter: sections with columns of numbers, and boxes to tick where things are
// counted off by hand.

#include "app/papers/paper_pages.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace holdfast::app {

// A bar below a row, its parts as shares of the width of the paper.
struct ListBar {
    double length = 0;
    double hatched = 0;        // of the length, at its end: an outline
    std::optional<double> low; // a line from here to `high`
    std::optional<double> high;
};

struct ListRow {
    QString name;
    QStringList cells; // one for each head
    QString remark;    // below the name
    std::optional<ListBar> bar = {};
};

struct ListSection {
    QString heading; // empty: none
    QStringList heads;
    std::vector<ListRow> rows;
    QString nameHead = {}; // over the names
    QString above = {};    // a sentence below the heading; empty: none
    std::optional<PageBlock> chart = {};
    QString note = {}; // at its end; empty: none
};

struct PaperList {
    QString name; // of the files: "to-buy"
    PageHead head;
    QString above; // a sentence before the first section; empty: none
    std::vector<ListSection> sections;
    QString note; // at the end; empty: none
    bool hasBoxes = true;
};

std::vector<Paper> listPaper(const PaperList& list);

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A list on paper, for A4 and Letter: sections with columns of numbers, and boxes to tick where things are
// counted off by hand.

#include "app/papers/paper_pages.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace holdfast::app {

struct ListRow {
    QString name;
    QStringList cells; // one for each head
    QString remark;    // below the name
};

struct ListSection {
    QString heading; // empty: none
    QStringList heads;
    std::vector<ListRow> rows;
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

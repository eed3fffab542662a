// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/list_paper.h"

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr double kBoxSide = 5;
constexpr double kBesideBox = 8;
constexpr double kBetweenColumns = 5;
constexpr double kLeastName = 50;
constexpr double kBaseline = 5; // from the top of a row

constexpr PaperType kListName{4.2, QFont::Medium};
constexpr PaperType kListCell{4.2, QFont::Normal};
constexpr PaperType kListHead{3.3, QFont::DemiBold};
constexpr PaperType kListPlain{3.4, QFont::Normal};

// Right ends of the columns, and where names end.
struct ListColumns {
    double left = 0; // of the names
    double names = 0;
    std::vector<double> ends;
};

ListColumns columnsOf(const ListSection& section, bool hasBoxes) {
    ListColumns at;
    at.left = hasBoxes ? kBesideBox : 0;
    double right = kPageWidth;
    for (qsizetype column = section.heads.size(); column-- > 0;) {
        double wide = paperWidth(section.heads[column], kListHead);
        for (const ListRow& row : section.rows)
            wide = std::max(wide, paperWidth(row.cells[column], kListCell));
        at.ends.insert(at.ends.begin(), right);
        right -= wide + kBetweenColumns;
    }
    at.names = std::max(kLeastName, right - at.left);
    return at;
}

PageBlock headsBlock(const ListSection& section, const ListColumns& at) {
    return {6,
            [heads = section.heads, at](PaperInk& ink) {
                for (qsizetype column = 0; column < heads.size(); ++column)
                    ink.line({at.ends[static_cast<std::size_t>(column)], 3.8}, heads[column], kListHead,
                             Across::Right);
                ink.rule(at.left, kPageWidth, 5.2);
            },
            true};
}

PageBlock rowBlock(const ListRow& row, const ListColumns& at, bool hasBox) {
    const QStringList remark =
        row.remark.isEmpty() ? QStringList{} : brokenInto(kPageWidth - at.left, row.remark, kListPlain);
    const QStringList name = brokenInto(at.names, row.name, kListName);
    const double height = 2.2 + static_cast<double>(name.size()) * lineStep(kListName) +
                          static_cast<double>(remark.size()) * lineStep(kListPlain);
    return {std::max(height, kBoxSide + 2), [row, at, hasBox](PaperInk& ink) {
                if (hasBox)
                    ink.tickBox({0, 1}, kBoxSide);
                const double below = ink.lines({at.left, kBaseline - 3.8}, at.names, row.name, kListName);
                for (qsizetype column = 0; column < row.cells.size(); ++column)
                    ink.line({at.ends[static_cast<std::size_t>(column)], kBaseline}, row.cells[column],
                             kListCell, Across::Right);
                if (!row.remark.isEmpty())
                    ink.lines({at.left, below}, kPageWidth - at.left, row.remark, kListPlain);
            }};
}

PageBlock textBlock(const QString& text, const PaperType& type) {
    const double height = static_cast<double>(brokenInto(kPageWidth, text, type).size()) * lineStep(type);
    return {height + 3, [text, type](PaperInk& ink) { ink.lines({0, 0}, kPageWidth, text, type); }};
}

} // namespace

std::vector<Paper> listPaper(const PaperList& list) {
    std::vector<PageBlock> blocks;
    if (!list.above.isEmpty())
        blocks.push_back(textBlock(list.above, kListName));
    for (const ListSection& section : list.sections) {
        const ListColumns at = columnsOf(section, list.hasBoxes);
        if (!section.heading.isEmpty())
            blocks.push_back(headingBlock(section.heading));
        if (!section.heads.isEmpty())
            blocks.push_back(headsBlock(section, at));
        for (const ListRow& row : section.rows)
            blocks.push_back(rowBlock(row, at, list.hasBoxes));
    }
    if (!list.note.isEmpty())
        blocks.push_back(textBlock(list.note, kListPlain));
    return pagesOf(list.name, list.head, blocks);
}

} // namespace holdfast::app

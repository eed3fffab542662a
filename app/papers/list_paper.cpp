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
constexpr double kBarHeight = 2.4;
constexpr double kBarRoom = 5; // with its line below it

constexpr PaperType kListName{4.2, QFont::Medium};
constexpr PaperType kListCell{4.2, QFont::Normal};
constexpr PaperType kListHead{3.3, QFont::DemiBold};
constexpr PaperType kListPlain{3.4, QFont::Normal};

// Right ends of the columns, and where names end. Columns that would leave names no room are written smaller.
struct ListColumns {
    double left = 0; // of the names
    double names = 0;
    double scale = 1;
    std::vector<double> ends;

    PaperType head() const { return kListHead.at(kListHead.millimetres * scale); }
    PaperType cell() const { return kListCell.at(kListCell.millimetres * scale); }
};

ListColumns columnsOf(const ListSection& section, bool hasBoxes) {
    ListColumns at;
    at.left = hasBoxes ? kBesideBox : 0;
    std::vector<double> widths;
    double together = 0;
    for (qsizetype column = 0; column < section.heads.size(); ++column) {
        double wide = paperWidth(section.heads[column], kListHead);
        for (const ListRow& row : section.rows)
            wide = std::max(wide, paperWidth(row.cells[column], kListCell));
        widths.push_back(wide + kBetweenColumns);
        together += widths.back();
    }
    if (const double room = kPageWidth - at.left - kLeastName; together > room)
        at.scale = room / together;
    double right = kPageWidth;
    for (auto wide = widths.rbegin(); wide != widths.rend(); ++wide) {
        at.ends.insert(at.ends.begin(), right);
        right -= *wide * at.scale;
    }
    at.names = right - at.left;
    return at;
}

PageBlock headsBlock(const ListSection& section, const ListColumns& at) {
    return {6,
            [heads = section.heads, name = section.nameHead, at](PaperInk& ink) {
                ink.line({at.left, 3.8}, name, shrunkTo(at.names, name, kListHead, 1.5));
                for (qsizetype column = 0; column < heads.size(); ++column)
                    ink.line({at.ends[static_cast<std::size_t>(column)], 3.8}, heads[column], at.head(),
                             Across::Right);
                ink.rule(at.left, kPageWidth, 5.2);
            },
            true};
}

void drawBar(PaperInk& ink, const ListBar& bar, double y) {
    const double length = std::clamp(bar.length, 0.0, 1.0);
    const double hatched = std::clamp(bar.hatched, 0.0, length);
    const double plain = (length - hatched) * kPageWidth;
    ink.rule(0, std::max(plain, 0.3), y + kBarHeight / 2, kBarHeight);
    if (hatched > 0)
        ink.frame({plain, y, hatched * kPageWidth, kBarHeight}, 0.2);
    if (!bar.low || !bar.high)
        return;
    const double line = y + kBarHeight + 1;
    const double low = std::clamp(*bar.low, 0.0, 1.0) * kPageWidth;
    const double high = std::clamp(*bar.high, 0.0, 1.0) * kPageWidth;
    ink.rule(low, high, line, 0.25);
    for (const double end : {low, high})
        ink.rule(end - 0.15, end + 0.15, line, 1.6);
}

PageBlock rowBlock(const ListRow& row, const ListColumns& at, bool hasBox) {
    const QStringList remark =
        row.remark.isEmpty() ? QStringList{} : brokenInto(kPageWidth - at.left, row.remark, kListPlain);
    const QStringList name = brokenInto(at.names, row.name, kListName);
    const double lines = std::max(2.2 + static_cast<double>(name.size()) * lineStep(kListName) +
                                      static_cast<double>(remark.size()) * lineStep(kListPlain),
                                  kBoxSide + 2);
    return {lines + (row.bar ? kBarRoom : 0), [row, at, hasBox, lines](PaperInk& ink) {
                if (hasBox)
                    ink.tickBox({0, 1}, kBoxSide);
                const double below = ink.lines({at.left, kBaseline - 3.8}, at.names, row.name, kListName);
                for (qsizetype column = 0; column < row.cells.size(); ++column)
                    ink.line({at.ends[static_cast<std::size_t>(column)], kBaseline}, row.cells[column],
                             at.cell(), Across::Right);
                if (!row.remark.isEmpty())
                    ink.lines({at.left, below}, kPageWidth - at.left, row.remark, kListPlain);
                if (row.bar)
                    drawBar(ink, *row.bar, lines);
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
        if (!section.above.isEmpty())
            blocks.push_back(textBlock(section.above, kListName));
        if (section.chart)
            blocks.push_back(*section.chart);
        if (!section.heads.isEmpty() && !section.rows.empty())
            blocks.push_back(headsBlock(section, at));
        for (const ListRow& row : section.rows)
            blocks.push_back(rowBlock(row, at, list.hasBoxes));
        if (!section.note.isEmpty())
            blocks.push_back(textBlock(section.note, kListPlain));
    }
    if (!list.note.isEmpty())
        blocks.push_back(textBlock(list.note, kListPlain));
    return pagesOf(list.name, list.head, blocks);
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_sheets.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdfast::app {

namespace {

constexpr double kSheetMargin = 8; // mm; printers leave some millimetres white
constexpr double kBetween = 6;
constexpr double kMark = 2.4;
constexpr double kOffCorner = 0.4;

constexpr double kNarrowestSheet = 139; // mm; half a Letter is 140 wide, a roll of wide labels 104
constexpr double kAlike = 0.01;         // printers give their pages in whole points

// This much of the paper's size has room, at most all of it.
double shareOf(const QSizeF& page, const QSizeF& paper) {
    const double share = std::min(page.width() / paper.width(), page.height() / paper.height());
    return share > 1 - kAlike ? 1 : share;
}

// Papers side by side on one sheet.
struct SheetGrid {
    int columns = 0;
    int rows = 0;
    bool isTurned = false;
    QSizeF cell;

    int count() const { return columns * rows; }
};

SheetGrid gridOf(const QSizeF& cell, const QSizeF& sheet, bool isTurned) {
    const auto fits = [](double room, double each) {
        return std::max(
            0, static_cast<int>(std::floor((room - 2 * kSheetMargin + kBetween) / (each + kBetween))));
    };
    return {fits(sheet.width(), cell.width()), fits(sheet.height(), cell.height()), isTurned, cell};
}

SheetGrid bestGrid(const QSizeF& paper, const QSizeF& sheet) {
    const SheetGrid upright = gridOf(paper, sheet, false);
    const SheetGrid turned = gridOf(paper.transposed(), sheet, true);
    return turned.count() > upright.count() ? turned : upright;
}

void markCorners(PaperInk& ink, const QRectF& box) {
    for (const double x : {box.left(), box.right()})
        for (const double y : {box.top(), box.bottom()}) {
            const double outX = x == box.left() ? -1 : 1;
            const double outY = y == box.top() ? -1 : 1;
            QPainterPath mark;
            mark.moveTo(x + outX * kOffCorner, y);
            mark.lineTo(x + outX * (kOffCorner + kMark), y);
            mark.moveTo(x, y + outY * kOffCorner);
            mark.lineTo(x, y + outY * (kOffCorner + kMark));
            ink.stroke(mark, {}, 0.15);
        }
}

// Alone on its page, upright or turned by a quarter to the right.
Paper aloneOn(const Paper& paper, const QSizeF& page) {
    const bool isTurned = shareOf(page, paper.size.transposed()) > shareOf(page, paper.size) + kAlike;
    const double scale = scaleOn(page, paper.size);
    const QSizeF drawn = (isTurned ? paper.size.transposed() : paper.size) * scale;
    const QPointF corner((page.width() - drawn.width()) / 2, (page.height() - drawn.height()) / 2);
    const QTransform where = isTurned
                                 ? QTransform(0, scale, -scale, 0, corner.x() + drawn.width(), corner.y())
                                 : QTransform(scale, 0, 0, scale, corner.x(), corner.y());
    return {paper.name, page, [paper, where](PaperInk& ink) { ink.placed(where, [&] { paper.draw(ink); }); }};
}

Paper togetherOn(std::vector<Paper> papers, const QSizeF& sheet, const SheetGrid& grid) {
    const QString name = papers.front().name;
    return {name, sheet, [papers = std::move(papers), grid](PaperInk& ink) {
                for (std::size_t at = 0; at < papers.size(); ++at) {
                    const auto column = static_cast<int>(at) % grid.columns;
                    const auto row = static_cast<int>(at) / grid.columns;
                    const QPointF corner(kSheetMargin + column * (grid.cell.width() + kBetween),
                                         kSheetMargin + row * (grid.cell.height() + kBetween));
                    markCorners(ink, {corner, grid.cell});
                    const QTransform where =
                        grid.isTurned ? QTransform(0, 1, -1, 0, corner.x() + grid.cell.width(), corner.y())
                                      : QTransform::fromTranslate(corner.x(), corner.y());
                    ink.placed(where, [&] { papers[at].draw(ink); });
                }
            }};
}

} // namespace

bool isSheet(const QSizeF& page) {
    return std::min(page.width(), page.height()) >= kNarrowestSheet;
}

double scaleOn(const QSizeF& page, const QSizeF& paper) {
    return std::max(shareOf(page, paper), shareOf(page, paper.transposed()));
}

std::vector<Paper> laidOnSheets(const std::vector<Paper>& papers, const QSizeF& page) {
    std::vector<Paper> sheets;
    std::vector<Paper> waiting;
    SheetGrid grid;
    const auto layWaiting = [&] {
        if (!waiting.empty())
            sheets.push_back(togetherOn(std::exchange(waiting, {}), page, grid));
    };
    for (const Paper& paper : papers) {
        if (!waiting.empty() && waiting.front().size != paper.size)
            layWaiting();
        grid = isSheet(page) ? bestGrid(paper.size, page) : SheetGrid{};
        if (grid.count() == 0) {
            sheets.push_back(aloneOn(paper, page));
            continue;
        }
        waiting.push_back(paper);
        if (static_cast<int>(waiting.size()) == grid.count())
            layWaiting();
    }
    layWaiting();
    return sheets;
}

} // namespace holdfast::app

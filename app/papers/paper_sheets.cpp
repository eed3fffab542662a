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

// Alone on its sheet: as it is, or smaller where it is larger than the sheet.
Paper aloneOn(const Paper& paper, const QSizeF& sheet) {
    const double scale =
        std::min({1.0, sheet.width() / paper.size.width(), sheet.height() / paper.size.height()});
    return {paper.name, sheet, [paper, scale](PaperInk& ink) {
                ink.moved({0, 0}, scale, [&] { paper.draw(ink); });
            }};
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

std::vector<Paper> laidOnSheets(const std::vector<Paper>& papers, const QSizeF& sheet) {
    std::vector<Paper> sheets;
    std::vector<Paper> waiting;
    SheetGrid grid;
    const auto layWaiting = [&] {
        if (!waiting.empty())
            sheets.push_back(togetherOn(std::exchange(waiting, {}), sheet, grid));
    };
    for (const Paper& paper : papers) {
        if (!waiting.empty() && waiting.front().size != paper.size)
            layWaiting();
        grid = bestGrid(paper.size, sheet);
        if (grid.count() == 0) {
            sheets.push_back(aloneOn(paper, sheet));
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

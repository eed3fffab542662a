// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/page_choice.h"

#include "app/papers/paper_sheets.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

struct PageWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PageChoice)
};

constexpr double kSameWidth = 1; // mm

// Of the roll that is in the printer, cut elsewhere. A page of another width is other paper, for which the
// printer would stop and ask.
bool isOfSameRoll(const PrintPage& one, const PrintPage& other) {
    return !isSheet(one.size) && std::abs(one.size.width() - other.size.width()) < kSameWidth;
}

} // namespace

double smallestOn(const PrintPage& page, std::span<const Paper> papers) {
    double smallest = 1;
    for (const Paper& paper : papers)
        smallest = std::min(smallest, scaleOn(page.size, paper.size));
    return smallest;
}

PrintPage pageFor(const PrintQueue& queue, std::span<const Paper> papers) {
    PrintPage best = queue.page;
    double share = smallestOn(best, papers);
    if (share >= kReadable)
        return best;
    for (const PrintPage& page : queue.pages) {
        const double there = smallestOn(page, papers);
        const bool isShorter = there == share && page.size.height() < best.size.height();
        if (isOfSameRoll(queue.page, page) && (there > share || isShorter)) {
            best = page;
            share = there;
        }
    }
    return best;
}

QString sizeInWords(const PrintPage& page) {
    return PageWords::tr("%1 × %2 mm")
        .arg(std::lround(page.size.width()))
        .arg(std::lround(page.size.height()));
}

} // namespace holdfast::app

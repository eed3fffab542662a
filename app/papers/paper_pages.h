// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Sheets of as many pages as they need, for A4 and Letter: blocks that are below each other and are never
// parted by the end of a page, each page with its head.

#include "app/papers/paper.h"

#include <functional>
#include <vector>

namespace holdfast::app {

inline constexpr double kPageWidth = 182; // mm, between the margins

struct PageBlock {
    double height = 0;                   // mm
    std::function<void(PaperInk&)> draw; // from its own upper left corner
    bool leads = false;                  // is on one page with the block after it
};

struct PageHead {
    QString title;
    QString under;
};

// Below a rule, over what follows it.
PageBlock headingBlock(const QString& words);
PageBlock sentenceBlock(const QString& words);

// At least one page; their names are this one and a number.
std::vector<Paper> pagesOf(const QString& name, const PageHead& head, const std::vector<PageBlock>& blocks);

} // namespace holdfast::app

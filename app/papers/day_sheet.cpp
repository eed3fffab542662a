// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/day_sheet.h"

#include "app/desk/formats.h"
#include "app/papers/day_sheet_blocks.h"

#include <QCoreApplication>

#include <iterator>

namespace holdfast::app {

namespace {

struct DayHead {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::DaySheet)
};

std::vector<PageBlock> dayBlocks(const ReckonedShop& shop) {
    const Walk walk = walkOf(shop);
    std::vector<PageBlock> blocks{cautionBlock()};
    const auto add = [&](std::vector<PageBlock> more) {
        blocks.insert(blocks.end(), std::make_move_iterator(more.begin()),
                      std::make_move_iterator(more.end()));
    };
    add(rollBlocks(shop, walk));
    if (walk.runs.empty())
        blocks.push_back(sentenceBlock(DayHead::tr("Nothing can be pressed today.")));
    int number = 0;
    for (const WalkRun& run : walk.runs)
        add(runBlocks(shop, run, ++number));
    if (!walk.aside.empty())
        blocks.push_back(headingBlock(DayHead::tr("Aside: not to be pressed until what is needed is done")));
    for (const AsideEntry& entry : walk.aside)
        blocks.push_back(asideBlock(shop, entry));
    return blocks;
}

PageHead dayHead(const ReckonedShop& shop) {
    const Walk walk = walkOf(shop);
    PageHead head;
    head.title = DayHead::tr("At the press, %1").arg(longDay(shop.now.today()));
    head.under =
        DayHead::tr("%1 of %2 pressed at %3").arg(walk.pressed).arg(walk.total).arg(clock(shop.now.local()));
    if (!shop.facts.settings.shopName.empty())
        head.under = QStringLiteral("%1 · %2").arg(words(shop.facts.settings.shopName), head.under);
    return head;
}

} // namespace

std::vector<Paper> daySheet(const ReckonedShop& shop) {
    return pagesOf(QStringLiteral("day-sheet"), dayHead(shop), dayBlocks(shop));
}

} // namespace holdfast::app

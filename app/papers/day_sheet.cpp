// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/day_sheet.h"

#include "app/desk/formats.h"
#include "app/papers/day_sheet_blocks.h"

#include <QCoreApplication>

#include <iterator>

namespace holdfast::app {

namespace {

// As wide as A4 and as high as Letter: at its own size on either.
constexpr QSizeF kDaySheetSize{210, 279};
constexpr double kDayLeft = 14;
constexpr double kHeadTop = 12;
constexpr double kBlocksTop = 32;
constexpr double kBlocksBottom = 267;

constexpr PaperType kDayTitle{7.4, QFont::DemiBold, true};
constexpr PaperType kDayUnder{3.8, QFont::Normal};

struct DayHead {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::DaySheet)

public:
    QString title;
    QString under;
};

struct PlacedBlock {
    DayBlock block;
    double y = 0;
};

using DayPage = std::vector<PlacedBlock>;

// How high a block is with all that it leads.
double heightTogether(const std::vector<DayBlock>& blocks, std::size_t at) {
    double height = blocks[at].height;
    while (blocks[at].leads && at + 1 < blocks.size())
        height += blocks[++at].height;
    return height;
}

std::vector<DayPage> placed(const std::vector<DayBlock>& blocks) {
    std::vector<DayPage> pages(1);
    double y = kBlocksTop;
    for (std::size_t at = 0; at < blocks.size(); ++at) {
        if (!pages.back().empty() && y + heightTogether(blocks, at) > kBlocksBottom) {
            pages.emplace_back();
            y = kBlocksTop;
        }
        pages.back().push_back({blocks[at], y});
        y += blocks[at].height;
    }
    return pages;
}

std::vector<DayBlock> dayBlocks(const ReckonedShop& shop) {
    const Walk walk = walkOf(shop);
    std::vector<DayBlock> blocks{cautionBlock()};
    const auto add = [&](std::vector<DayBlock> more) {
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

DayHead dayHead(const ReckonedShop& shop) {
    const Walk walk = walkOf(shop);
    DayHead head;
    head.title = DayHead::tr("At the press, %1").arg(longDay(shop.now.today()));
    head.under =
        DayHead::tr("%1 of %2 pressed at %3").arg(walk.pressed).arg(walk.total).arg(clock(shop.now.local()));
    if (!shop.facts.settings.shopName.empty())
        head.under = QStringLiteral("%1 · %2").arg(words(shop.facts.settings.shopName), head.under);
    return head;
}

void drawDayHead(PaperInk& ink, const DayHead& head, std::size_t page, std::size_t pages) {
    const double right = kDayLeft + kDaySheetWidth;
    const QString count = DayHead::tr("page %1 of %2").arg(page).arg(pages);
    const double room = kDaySheetWidth - paperWidth(count, kDayUnder) - 6;
    ink.line({kDayLeft, kHeadTop + 7}, head.title, shrunkTo(room, head.title, kDayTitle, 4));
    ink.line({right, kHeadTop + 7}, count, kDayUnder, Across::Right);
    ink.line({kDayLeft, kHeadTop + 13.4}, head.under, shrunkTo(kDaySheetWidth, head.under, kDayUnder, 2.4));
    ink.rule(kDayLeft, right, kHeadTop + 16.4, 0.6);
}

} // namespace

std::vector<Paper> daySheet(const ReckonedShop& shop) {
    const DayHead head = dayHead(shop);
    const std::vector<DayPage> pages = placed(dayBlocks(shop));
    std::vector<Paper> sheets;
    for (std::size_t at = 0; at < pages.size(); ++at)
        sheets.push_back({QStringLiteral("day-sheet-%1").arg(at + 1), kDaySheetSize,
                          [head, page = pages[at], at, count = pages.size()](PaperInk& ink) {
                              drawDayHead(ink, head, at + 1, count);
                              for (const PlacedBlock& each : page)
                                  ink.moved({kDayLeft, each.y}, 1, [&] { each.block.draw(ink); });
                          }});
    return sheets;
}

} // namespace holdfast::app

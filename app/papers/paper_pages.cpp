// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_pages.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct PageWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperPages)
};

// As wide as A4 and as high as Letter: at its own size on either.
constexpr QSizeF kPageSize{210, 279};
constexpr double kPageLeft = 14;
constexpr double kHeadTop = 12;
constexpr double kBlocksTop = 32;
constexpr double kBlocksBottom = 267;

constexpr PaperType kPageTitle{7.4, QFont::DemiBold, true};
constexpr PaperType kPageUnder{3.8, QFont::Normal};
constexpr PaperType kPageHeading{5.4, QFont::Bold};
constexpr PaperType kPageSentence{4.2, QFont::Medium};

struct PlacedBlock {
    PageBlock block;
    double y = 0;
};

using Page = std::vector<PlacedBlock>;

// How high a block is with all that it leads.
double heightTogether(const std::vector<PageBlock>& blocks, std::size_t at) {
    double height = blocks[at].height;
    while (blocks[at].leads && at + 1 < blocks.size())
        height += blocks[++at].height;
    return height;
}

std::vector<Page> placed(const std::vector<PageBlock>& blocks) {
    std::vector<Page> pages(1);
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

void drawPageHead(PaperInk& ink, const PageHead& head, std::size_t page, std::size_t pages) {
    const double right = kPageLeft + kPageWidth;
    const QString count = PageWords::tr("page %1 of %2").arg(page).arg(pages);
    const double room = kPageWidth - paperWidth(count, kPageUnder) - 6;
    ink.line({kPageLeft, kHeadTop + 7}, head.title, shrunkTo(room, head.title, kPageTitle, 4));
    ink.line({right, kHeadTop + 7}, count, kPageUnder, Across::Right);
    ink.line({kPageLeft, kHeadTop + 13.4}, head.under, shrunkTo(kPageWidth, head.under, kPageUnder, 2.4));
    ink.rule(kPageLeft, right, kHeadTop + 16.4, 0.6);
}

} // namespace

PageBlock headingBlock(const QString& said) {
    return {12,
            [said](PaperInk& ink) {
                ink.rule(0, kPageWidth, 1.6);
                ink.line({0, 8.4}, said, shrunkTo(kPageWidth, said, kPageHeading, 3.4));
            },
            true};
}

PageBlock sentenceBlock(const QString& said) {
    return {9, [said](PaperInk& ink) { ink.line({0, 5.4}, said, kPageSentence); }};
}

std::vector<Paper> pagesOf(const QString& name, const PageHead& head, const std::vector<PageBlock>& blocks) {
    const std::vector<Page> pages = placed(blocks);
    std::vector<Paper> sheets;
    for (std::size_t at = 0; at < pages.size(); ++at)
        sheets.push_back({QStringLiteral("%1-%2").arg(name).arg(at + 1), kPageSize,
                          [head, page = pages[at], at, count = pages.size()](PaperInk& ink) {
                              drawPageHead(ink, head, at + 1, count);
                              for (const PlacedBlock& each : page)
                                  ink.moved({kPageLeft, each.y}, 1, [&] { each.block.draw(ink); });
                          }});
    return sheets;
}

} // namespace holdfast::app

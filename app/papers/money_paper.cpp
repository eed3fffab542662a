// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/money_paper.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

struct MoneyPaperWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::MoneyPaper)
};

constexpr QSizeF kMoneySize{210, 279};
constexpr double kMoneyLeft = 20;
constexpr double kMoneyRight = 190;
constexpr double kMoneyTop = 20;
constexpr double kMoneyBottom = 262;
constexpr double kMoneyWide = kMoneyRight - kMoneyLeft;
constexpr double kHalfWide = kMoneyWide / 2 - 5;
constexpr double kAmountWide = 34;
constexpr double kBetweenBlocks = 7;

constexpr PaperType kMoneyShop{5.6, QFont::DemiBold, true};
constexpr PaperType kMoneyTitle{7.4, QFont::DemiBold, true};
constexpr PaperType kMoneyText{4, QFont::Normal};
constexpr PaperType kMoneyStrong{4, QFont::Bold};
constexpr PaperType kMoneySmall{3.4, QFont::Normal};

// A part of the sheet that stays together: how high it is, and how it is drawn from its top edge down.
struct MoneyBlock {
    double height = 0;
    std::function<void(PaperInk&, double y)> draw;
};

double heightOf(const QStringList& lines, double width, const PaperType& type) {
    double height = 0;
    for (const QString& line : lines)
        height += lineStep(type) * static_cast<double>(brokenInto(width, line, type).size());
    return height;
}

void drawLines(PaperInk& ink, QPointF at, const QStringList& lines, double width, const PaperType& type) {
    double y = at.y();
    for (const QString& line : lines)
        y = ink.lines({at.x(), y}, width, line, type);
}

// Shop and title, then the customer next to what is known of the paper.
MoneyBlock headBlock(const MoneyPaper& paper) {
    const QString shop = paper.shop.value(0);
    const PaperType shopType = shrunkTo(kMoneyWide, shop, kMoneyShop, 3);
    const QStringList shopLines = paper.shop.mid(1);
    const PaperType titleType = shrunkTo(kMoneyWide, paper.title, kMoneyTitle, 4);
    const double under = lineStep(shopType) + heightOf(shopLines, kMoneyWide, kMoneySmall) + kBetweenBlocks;
    const double parties = under + lineStep(titleType) + 2;
    const double high = std::max(heightOf(paper.customer, kHalfWide, kMoneyText),
                                 heightOf(paper.facts, kHalfWide, kMoneyText));
    return {parties + high + kBetweenBlocks, [=, title = paper.title, customer = paper.customer,
                                              facts = paper.facts](PaperInk& ink, double y) {
                ink.line({kMoneyLeft, y + shopType.millimetres}, shop, shopType);
                drawLines(ink, {kMoneyLeft, y + lineStep(shopType)}, shopLines, kMoneyWide, kMoneySmall);
                ink.line({kMoneyLeft, y + under + titleType.millimetres}, title, titleType);
                drawLines(ink, {kMoneyLeft, y + parties}, customer, kHalfWide, kMoneyText);
                drawLines(ink, {kMoneyLeft + kMoneyWide / 2 + 5, y + parties}, facts, kHalfWide, kMoneyText);
            }};
}

MoneyBlock lineBlock(const MoneyLine& line) {
    const PaperType type = line.isStrong ? kMoneyStrong : kMoneyText;
    const double room = kMoneyWide - kAmountWide;
    return {heightOf({line.words}, room, type) + 1.4, [line, type, room](PaperInk& ink, double y) {
                drawLines(ink, {kMoneyLeft, y}, {line.words}, room, type);
                ink.line({kMoneyRight, y + type.millimetres}, line.amount,
                         shrunkTo(kAmountWide - 3, line.amount, type, 2), Across::Right);
            }};
}

MoneyBlock ruleBlock() {
    return {2.4, [](PaperInk& ink, double y) { ink.rule(kMoneyLeft, kMoneyRight, y + 0.8); }};
}

MoneyBlock textBlock(const QStringList& lines, const PaperType& type) {
    return {kBetweenBlocks + heightOf(lines, kMoneyWide, type), [lines, type](PaperInk& ink, double y) {
                drawLines(ink, {kMoneyLeft, y + kBetweenBlocks}, lines, kMoneyWide, type);
            }};
}

std::vector<MoneyBlock> blocksOf(const MoneyPaper& paper) {
    std::vector<MoneyBlock> blocks{headBlock(paper), ruleBlock()};
    for (const MoneyLine& row : paper.rows)
        blocks.push_back(lineBlock(row));
    // Sums are on one page.
    std::vector<MoneyBlock> sums{ruleBlock()};
    double high = sums.front().height;
    for (const MoneyLine& sum : paper.sums) {
        sums.push_back(lineBlock(sum));
        high += sums.back().height;
    }
    blocks.push_back({high, [sums](PaperInk& ink, double y) {
                          for (const MoneyBlock& each : sums) {
                              each.draw(ink, y);
                              y += each.height;
                          }
                      }});
    if (!paper.notes.isEmpty())
        blocks.push_back(textBlock(paper.notes, kMoneyText));
    if (!paper.foot.isEmpty())
        blocks.push_back(textBlock(paper.foot, kMoneySmall));
    return blocks;
}

using MoneyPage = std::vector<std::pair<MoneyBlock, double>>;

std::vector<MoneyPage> pagesOf(const std::vector<MoneyBlock>& blocks) {
    std::vector<MoneyPage> pages(1);
    double y = kMoneyTop;
    for (const MoneyBlock& block : blocks) {
        if (!pages.back().empty() && y + block.height > kMoneyBottom) {
            pages.emplace_back();
            y = kMoneyTop;
        }
        pages.back().emplace_back(block, y);
        y += block.height;
    }
    return pages;
}

} // namespace

std::vector<Paper> moneyPages(const MoneyPaper& paper) {
    const std::vector<MoneyPage> pages = pagesOf(blocksOf(paper));
    std::vector<Paper> sheets;
    for (std::size_t at = 0; at < pages.size(); ++at) {
        const QString count =
            pages.size() == 1
                ? QString()
                : MoneyPaperWords::tr("%1, page %2 of %3").arg(paper.title).arg(at + 1).arg(pages.size());
        sheets.push_back(
            {pages.size() == 1 ? paper.name : QStringLiteral("%1-%2").arg(paper.name).arg(at + 1), kMoneySize,
             [page = pages[at], count](PaperInk& ink) {
                 for (const auto& [block, y] : page)
                     block.draw(ink, y);
                 ink.line({kMoneyRight, kMoneyBottom + 8}, count, kMoneySmall, Across::Right);
             }});
    }
    return sheets;
}

QStringList typedLines(const std::string& text) {
    QStringList lines;
    for (const QString& line : words(text).split(u';', Qt::SkipEmptyParts))
        if (!line.trimmed().isEmpty())
            lines.append(line.trimmed());
    return lines;
}

} // namespace holdfast::app

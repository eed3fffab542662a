// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/money_sheets.h"

#include "app/desk/formats.h"
#include "app/desk/takings_words.h"
#include "app/places/figures/figure_words.h"

#include <algorithm>

namespace holdfast::app {

void MoneySheets::till(FigureSheet& sheet) const {
    if (m_figures.tillCounts.empty())
        return;
    Money off;
    const auto right = std::ranges::count(m_figures.tillCounts, Money{}, &TillCount::difference);
    sheet.nameHead = tr("Day");
    sheet.heads = {tr("At the start"), tr("Cash in, less out"), tr("Should be"), tr("Counted"),
                   tr("Difference")};
    const auto amount = [&](Money money) { return app::money(money, m_shown.currency); };
    for (const TillCount& count : m_figures.tillCounts) {
        const Money difference = count.difference();
        off += difference;
        sheet.rows.append(
            {day(count.day),
             {},
             {amount(count.floatAtStart), amount(count.cash), amount(count.expected()), amount(count.counted),
              difference == Money{} ? dash() : amount(difference)},
             difference == Money{} ? QString() : words(tillDifferenceWords(difference, m_shown.currency))});
    }
    sheet.answer = tr("%1 of %2 days").arg(right).arg(m_figures.tillCounts.size());
    sheet.whole = tr("The till was as it should be on %1 of %2 days; all together: %3.")
                      .arg(right)
                      .arg(m_figures.tillCounts.size())
                      .arg(words(tillDifferenceWords(off, m_shown.currency)));
    sheet.note =
        tr("What should be there is the cash at the start, with the cash taken for orders and less "
           "what was paid back in cash, as it was known when the till was counted. Cash that went "
           "elsewhere, to the bank or for a purchase, is not known. Whether the till must be counted, "
           "and how, is for local law and a tax adviser.");
}

// The latest first, a year before its quarters and a quarter before its months.
void MoneySheets::byMonth(FigureSheet& sheet) const {
    const std::vector<TakingsLine> lines = takingsLines(m_figures.takings);
    if (lines.empty())
        return;
    sheet.nameHead = tr("Taken in");
    sheet.heads = {tr("Received"), tr("Paid back"), tr("Tax in it"), tr("Invoiced"), tr("Its tax")};
    const auto amount = [&](Money money) {
        return money == Money{} ? dash() : app::money(money, m_shown.currency);
    };
    for (auto line = lines.rbegin(); line != lines.rend(); ++line) {
        const Takings& takings = line->takings;
        sheet.rows.append({TakingsWords::span(*line),
                           {},
                           {amount(takings.received()), amount(takings.paidBack()), amount(takings.tax),
                            amount(takings.billed()), amount(takings.billedTax())},
                           line->span == TakingsSpan::Month
                               ? TakingsWords::papers(takings)
                               : TakingsWords::ways(takings.money, m_shown.currency)});
    }
    const Takings& year = lines.back().takings;
    const Money kept = year.received() - year.paidBack();
    sheet.answer = app::money(kept, m_shown.currency);
    sheet.whole = tr("%1: %2 received, %3 paid back; %4 invoiced without tax, and %5 of tax.")
                      .arg(TakingsWords::span(lines.back()), app::money(year.received(), m_shown.currency),
                           app::money(year.paidBack(), m_shown.currency),
                           app::money(year.billedNet(), m_shown.currency),
                           app::money(year.billedTax(), m_shown.currency));
    sheet.note = TakingsWords::note(m_figures.invoicesInOtherCurrency);
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/money_sheets.h"

#include "app/desk/formats.h"
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

} // namespace holdfast::app

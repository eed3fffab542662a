// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/buy_sheet.h"

#include "app/desk/buy_words.h"
#include "app/desk/formats.h"
#include "app/places/figures/figure_words.h"

namespace holdfast::app {

void BuySheet::fill(FigureSheet& sheet) const {
    if (m_buy.lines.empty())
        return;
    sheet.nameHead = tr("To buy");
    sheet.heads = {tr("Left"), tr("Missing"), tr("Likely used"), tr("Buy at"), tr("Buy")};
    addLines(sheet);
    if (m_buy.isAnyBought()) {
        sheet.answer = BuyWords::amounts(m_buy);
        sheet.whole = tr("Buy %1, for about %2. The risk of running out before it arrives is then %3 % each.")
                          .arg(BuyWords::amounts(m_buy), money(m_buy.cost(), m_shown.currency))
                          .arg(m_shown.settings.runOutPercent);
    } else {
        sheet.answer = tr("nothing now");
        sheet.whole = tr("Nothing is to be bought now, as far as its use is known.");
    }
    sheet.note = note();
}

// A row of its own for each supplier, where any is written down.
void BuySheet::addLines(FigureSheet& sheet) const {
    const std::string* last = nullptr;
    const bool isAnyNamed = !m_buy.lines.front().supplier.empty();
    for (const ToBuy& line : m_buy.lines) {
        if (isAnyNamed && (!last || *last != line.supplier))
            sheet.rows.append({tr("From: %1").arg(BuyWords::supplier(line.supplier)),
                               {},
                               QStringList(sheet.heads.size(), QString()),
                               {}});
        last = &line.supplier;
        sheet.rows.append(
            {words(line.name),
             {},
             {BuyWords::amount(line, line.there),
              line.promised > 0 ? BuyWords::amount(line, line.promised) : dash(), BuyWords::useRange(line),
              line.isUseKnown() ? BuyWords::amount(line, line.reorderPoint) : dash(),
              line.buy > 0 ? BuyWords::amount(line, line.buy) : dash()},
             BuyWords::reason(line, m_buy.fair)});
    }
}

QString BuySheet::note() const {
    const ShopSettings& settings = m_shown.settings;
    return tr("An estimate from the last %1 weeks: what was ordered of each blank and cut of each film. Left "
              "is "
              "what nothing is reserved or waiting for; missing is what orders need and cannot have of it, "
              "held or not. Likely used is the likely range until more arrives: blanks %2, film %3. At “buy "
              "at” or below it is bought, to last %4 more. A busy fair or a new season is not in it; what is "
              "ordered and has not arrived is not known. The days and the risk are in the settings.")
        .arg(kUseWeeks)
        .arg(dayCount(settings.blankLeadTime), dayCount(settings.filmLeadTime),
             dayCount(settings.boughtToLast));
}

} // namespace holdfast::app

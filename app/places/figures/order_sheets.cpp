// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/order_sheets.h"

#include "app/desk/formats.h"
#include "app/places/figures/figure_words.h"

#include <algorithm>
#include <map>

namespace holdfast::app {

void OrderSheets::promises(FigureSheet& sheet) const {
    if (m_figures.promises.empty())
        return;
    const PromisesKept all = promisesKept(m_figures.promises);
    sheet.answer = tr("%1 of %2").arg(all.kept).arg(all.given);
    sheet.whole = tr("%1 of %2 orders were pressed by the time promised: %3, likely range %4.")
                      .arg(all.kept)
                      .arg(all.given)
                      .arg(percentOf(all.interval->share), spanOf(*all.interval));
    sheet.nameHead = tr("Promised for");
    sheet.heads = {tr("Orders"), tr("Kept"), tr("Share"), tr("Likely range")};
    std::map<std::chrono::year_month, std::vector<PromiseGiven>> byMonth;
    for (const PromiseGiven& promise : m_figures.promises) {
        const std::chrono::year_month_day day{dateOf(promise.promised)};
        byMonth[day.year() / day.month()].push_back(promise);
    }
    for (auto month = byMonth.rbegin(); month != byMonth.rend(); ++month) {
        const PromisesKept kept = promisesKept(month->second);
        sheet.rows.append({monthName(month->first),
                           FigureBar{kept.interval->share, kept.interval->low, kept.interval->high, 0},
                           {QString::number(kept.given), QString::number(kept.kept),
                            percentOf(kept.interval->share), spanOf(*kept.interval)},
                           {}});
    }
    sheet.most = 1;
    sheet.note = tr("An order is ready when its last garment is. One that was never pressed counts as not "
                    "kept; cancelled orders and quotations are not counted.");
}

void OrderSheets::takings(FigureSheet& sheet) const {
    if (m_figures.places.empty())
        return;
    Money ordered, taken;
    sheet.nameHead = tr("Taken at");
    sheet.heads = {tr("Days"), tr("Orders"), tr("Garments"), tr("Ordered"), tr("Paid so far")};
    for (const PlaceTakings& place : m_figures.places) {
        ordered += place.ordered;
        taken += place.taken;
        const auto length = static_cast<double>(place.ordered.minor);
        sheet.rows.append(
            {placeOfOrders(place.place),
             FigureBar{length, {}, {}, length - static_cast<double>(place.taken.minor)},
             {QString::number(place.days), QString::number(place.orders), QString::number(place.garments),
              money(place.ordered, m_shown.currency), money(place.taken, m_shown.currency)},
             {}});
        sheet.most = std::max(sheet.most, length);
    }
    sheet.answer = money(ordered, m_shown.currency);
    sheet.whole = tr("Ordered for %1, of which %2 is paid.")
                      .arg(money(ordered, m_shown.currency), money(taken, m_shown.currency));
    sheet.note =
        tr("Hatched: still owed. Days are those on which an order was taken. For tax, check local law.");
}

void OrderSheets::film(FigureSheet& sheet) const {
    if (m_figures.films.empty())
        return;
    FilmUse all;
    sheet.nameHead = tr("Film");
    sheet.heads = {tr("Received"), tr("Cut"), tr("Test strips"), tr("Left over"), tr("Never used")};
    for (const FilmUse& film : m_figures.films) {
        all.cut += film.cut;
        all.testStrips += film.testStrips;
        all.wasted += film.wasted;
        const auto lost = static_cast<double>((film.testStrips + film.wasted).value);
        const double gone = static_cast<double>(film.cut.value) + lost;
        sheet.rows.append(
            {words(film.film),
             FigureBar{gone, {}, {}, lost},
             {lengthOf(film.received), lengthOf(film.cut), lengthOf(film.testStrips), lengthOf(film.wasted),
              film.shareWasted() ? percentOf(*film.shareWasted()) : tr("–")},
             {}});
        sheet.most = std::max(sheet.most, gone);
    }
    const auto share = all.shareWasted();
    sheet.answer = share ? tr("%1 never used").arg(percentOf(*share)) : tr("nothing used yet");
    sheet.whole = share ? tr("%1 cut; %2 became test strips or was left on rolls that were used up.")
                              .arg(metres(all.cut), metres(all.testStrips + all.wasted))
                        : tr("Nothing was cut yet.");
    sheet.note = tr("Hatched: test strips and what was left over, which no decal was cut from. Film between "
                    "the decals of a cut counts as cut; the cutting bench shows it for each nest.");
}
} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/fair_sheets.h"

#include "app/desk/formats.h"
#include "app/places/figures/figure_words.h"

#include <algorithm>

namespace holdfast::app {

namespace {

// Fewer fairs than this say little: weather alone makes more difference.
constexpr qsizetype kFewFairs = 4;

double minorOf(Money amount) {
    return static_cast<double>(amount.minor);
}

QString onAverage(double count) {
    return valueWords(Decimal{count, 1});
}

// With a second decimal where hardly any is asked for: "0.03".
QString askedFor(double count) {
    return count < 0.1 ? valueWords(Decimal{count, 2}) : onAverage(count);
}

} // namespace

void FairSheets::earned(FigureSheet& sheet) const {
    if (m_figures.earned.empty())
        return;
    Money ordered, left, leftAtFairs;
    Minutes worked{0};
    qsizetype fairs = 0;
    sheet.nameHead = tr("Fair");
    sheet.heads = {tr("Garments"),         tr("Ordered"), tr("Cost of goods"),
                   tr("Stall and travel"), tr("Earned"),  tr("Per hour")};
    for (const Earned& earned : m_figures.earned) {
        ordered += earned.ordered;
        left += earned.left();
        if (earned.fair) {
            ++fairs;
            leftAtFairs += earned.left();
            worked += earned.fair->hoursWorked();
        }
        const auto amount = [&](Money money) { return app::money(money, m_shown.currency); };
        const auto anHour = earned.leftAnHour();
        const double spent = minorOf(earned.ordered) - std::max(0.0, minorOf(earned.left()));
        sheet.rows.append({earned.fair ? tr("%1, %2").arg(words(earned.place), date(earned.fair->firstDay))
                                       : tr("Taken at %1").arg(words(earned.place)),
                           FigureBar{minorOf(earned.ordered), {}, {}, spent},
                           {QString::number(earned.garments), amount(earned.ordered),
                            amount(earned.cost.total()), earned.fair ? amount(earned.stall()) : dash(),
                            amount(earned.left()), anHour ? amount(*anHour) : dash()},
                           !earned.fair              ? tr("not a listed fair")
                           : earned.left() < Money{} ? tr("cost more than it brought")
                                                     : QString()});
        sheet.most = std::max(sheet.most, minorOf(earned.ordered));
    }
    const QString leftWords = money(left, m_shown.currency);
    sheet.answer = tr("%1 earned of %2").arg(leftWords, money(ordered, m_shown.currency));
    sheet.whole = left < Money{} ? tr("Goods, stalls and travel cost %1 more than the %2 ordered.")
                                       .arg(money(-left, m_shown.currency), money(ordered, m_shown.currency))
                                 : tr("%1 was earned on orders of %2, after goods, stalls and travel.")
                                       .arg(leftWords, money(ordered, m_shown.currency));
    if (worked > Minutes{0})
        sheet.whole =
            tr("%1 At listed fairs, %2 an hour.")
                .arg(sheet.whole,
                     money(divided(leftAtFairs, 60, worked.count(), Rounding::HalfEven), m_shown.currency));
    sheet.note = earnedNote();
    if (fairs < kFewFairs)
        sheet.note = tr("So few fairs say little about the next one: weather alone makes more difference. %1")
                         .arg(sheet.note);
}

QString FairSheets::earnedNote() const {
    return tr("Hatched: what it cost. The cost of goods is blanks, film with what is cut away round the "
              "decals, the maker’s minutes and overhead, at today’s costs. Per hour counts the hours worked "
              "at the fair; time spent making is in the cost of goods. An order counts in full, even where "
              "money is still owed. For tax, check local law.");
}

void FairSheets::bring(FigureSheet& sheet) const {
    if (m_figures.nextFair)
        sheet.title = tr("What to bring to %1?").arg(words(m_figures.nextFair->name));
    if (m_figures.bring.days == 0)
        return;
    std::int64_t blanks = 0, missing = 0;
    sheet.nameHead = tr("Blank");
    sheet.heads = {tr("Asked for"), tr("Bring"),    tr("Washed"),   tr("To wash"),
                   tr("Missing"),   tr("Sold out"), tr("Back home")};
    for (const ToBring& kind : m_figures.bring.kinds) {
        const auto quantity = static_cast<double>(kind.brought.quantity);
        blanks += kind.brought.quantity;
        missing += kind.missing();
        sheet.rows.append(
            {words(kind.name),
             FigureBar{quantity, {}, {}, static_cast<double>(kind.missing())},
             {askedFor(kind.asked.mean), QString::number(kind.brought.quantity), QString::number(kind.ready),
              QString::number(kind.toWash), kind.missing() == 0 ? dash() : QString::number(kind.missing()),
              onAverage(kind.brought.shortage), onAverage(kind.brought.leftover)},
             {}});
        sheet.most = std::max(sheet.most, quantity);
    }
    sheet.answer =
        missing == 0 ? tr("%1 blanks").arg(blanks) : tr("%1 blanks, %2 missing").arg(blanks).arg(missing);
    sheet.whole = bringSentence();
    if (m_figures.bring.isFromFew())
        sheet.whole = tr("%1 So few fair days say little.").arg(sheet.whole);
    sheet.note = bringNote();
}

QString FairSheets::occasion() const {
    const std::int64_t days = m_figures.bring.comingDays;
    if (!m_figures.nextFair)
        return tr("a day of a fair");
    return days == 1 ? tr("%1").arg(dayNear(m_figures.nextFair->lastDay, m_shown.today))
                     : tr("%1 until %2")
                           .arg(dayCount(Days{days}), dayNear(m_figures.nextFair->lastDay, m_shown.today));
}

QString FairSheets::bringSentence() const {
    const WhatToBring& bring = m_figures.bring;
    if (bring.asked <= 0)
        return tr("Nothing was sold on those fair days.");
    if (bring.kinds.empty())
        return tr(
            "Nothing sold at fairs so far earns enough, or is asked for often enough, to be worth bringing.");
    return tr("For %1: expect about %2 to be asked for, to be short of %3, and to bring %4 back home.")
        .arg(occasion(), onAverage(bring.asked), onAverage(bring.shortage), onAverage(bring.leftover));
}

QString FairSheets::bringNote() const {
    const WhatToBring& bring = m_figures.bring;
    const QString from = tr("An estimate from a single fair day.|An estimate from %n fair days.", nullptr,
                            howMany(bring.days));
    return tr("%1 Hatched: not on the rail. A missing blank loses its margin; one that comes back home "
              "costs only a small share of its price (Settings), so bringing too many is cheaper than "
              "bringing too few. Customers who left without ordering are not counted. Each size and "
              "colour is counted by itself: that a customer may take another one is left out, and so "
              "is the room in the car. Washed includes what is in the wash. Sold out and Back home "
              "are averages, if everything under Bring is brought.")
        .arg(from);
}

} // namespace holdfast::app

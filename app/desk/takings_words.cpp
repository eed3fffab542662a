// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/takings_words.h"

#include "app/desk/formats.h"

#include <QStringList>

namespace holdfast::app {

QString TakingsWords::span(const TakingsLine& line) {
    const int year{line.from.year()};
    switch (line.span) {
    case TakingsSpan::Month:
        return month(line.from);
    case TakingsSpan::Quarter:
        return tr("Quarter %1 of %2").arg(line.quarter()).arg(year);
    case TakingsSpan::Year:
        break;
    }
    return tr("Year %1").arg(year);
}

QString TakingsWords::ways(const DayMoney& moved, const Currency& currency) {
    QStringList parts;
    const auto add = [&](PaidHow how, const QString& pattern) {
        if (moved.in(how) != Money{} || moved.out(how) != Money{})
            parts << pattern.arg(money(moved.of(how), currency));
    };
    add(PaidHow::Cash, tr("Cash %1"));
    add(PaidHow::Card, tr("Card %1"));
    add(PaidHow::Transfer, tr("Transfer %1"));
    return parts.join(QStringLiteral(", "));
}

QString TakingsWords::papers(const Takings& takings) {
    QStringList parts;
    if (takings.invoices > 0)
        parts << tr("%n invoice|%n invoices", nullptr, howMany(takings.invoices));
    if (takings.creditNotes > 0)
        parts << tr("%n credit note|%n credit notes", nullptr, howMany(takings.creditNotes));
    return parts.join(QStringLiteral(", "));
}

QString TakingsWords::note(std::int64_t inOtherCurrency) {
    QString note =
        tr("Money is of the day it moved, whatever became of the order; the tax in it follows from the rate "
           "on the order’s bill, and may be some of the smallest coins off a bill whose tax is rounded line "
           "by line. Invoices and credit notes are of the day they were made. Quarters and years are those "
           "of the calendar. This helps with the books and is no tax return: which of it counts, and when, "
           "is for local law and a tax adviser.");
    if (inOtherCurrency > 0)
        note += QLatin1Char(' ') + tr("%n invoice or credit note in another currency is not counted.|%n "
                                      "invoices and credit notes in another currency are not counted.",
                                      nullptr, howMany(inOtherCurrency));
    return note;
}

} // namespace holdfast::app

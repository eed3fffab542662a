// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/figure_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

QString inFigures(const char* text) {
    return QCoreApplication::translate("holdfast::app::FigureWords", text);
}

} // namespace

QString withCapital(const QString& text) {
    return text.left(1).toUpper() + text.mid(1);
}

QString spanOf(const ShareInterval& interval) {
    return inFigures("%1 to %2").arg(percentOf(interval.low), percentOf(interval.high));
}

QString lengthOf(Millimetres length) {
    return length.value == 0 ? dash() : metres(length);
}

QString monthName(std::chrono::year_month month) {
    return date(LocalDate{month / 1}).section(QLatin1Char(' '), 1);
}

QString placeOfOrders(const std::string& place) {
    return place == "workshop" ? inFigures("The workshop") : words(place);
}

QString dash() {
    return QStringLiteral("–");
}

} // namespace holdfast::app

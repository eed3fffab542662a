// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/figure_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class FigureWords {
    Q_DECLARE_TR_FUNCTIONS(FigureWords)
};

} // namespace

QString withCapital(const QString& text) {
    return text.left(1).toUpper() + text.mid(1);
}

QString spanOf(const ShareInterval& interval) {
    return FigureWords::tr("%1 to %2").arg(percentOf(interval.low), percentOf(interval.high));
}

QString lengthOf(Millimetres length) {
    return length.value == 0 ? dash() : metres(length);
}

QString monthName(std::chrono::year_month month) {
    return app::month(month);
}

QString placeOfOrders(const std::string& place) {
    return place == "workshop" ? FigureWords::tr("The workshop") : words(place);
}

QString dash() {
    return QStringLiteral("–");
}

} // namespace holdfast::app

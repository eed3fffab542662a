// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/air_window.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr Days kMonth{30};
constexpr Days kQuarter{90};

Instant firstReading(const ReckonedShop& shop, const FilmRoll& roll) {
    const auto place = roll.placeNow();
    const auto readings = place ? shop.climate.find(*place) : shop.climate.end();
    if (readings == shop.climate.end() || !readings->second || readings->second->empty())
        return shop.now.instant - kMonth;
    return readings->second->front().at;
}

} // namespace

AirWindow nextOf(AirWindow window) {
    return static_cast<AirWindow>((static_cast<int>(window) + 1) % (static_cast<int>(AirWindow::All) + 1));
}

QString windowWords(AirWindow window) {
    switch (window) {
    case AirWindow::Month:
        return dayCount(kMonth);
    case AirWindow::Quarter:
        return dayCount(kQuarter);
    case AirWindow::SinceItCame:
        return QCoreApplication::translate("AirWindow", "since it came");
    case AirWindow::All:
        return QCoreApplication::translate("AirWindow", "all readings");
    }
    return {};
}

ClimateWindow windowOf(AirWindow window, const ReckonedShop& shop, const FilmRoll& roll) {
    const Instant now = shop.now.instant;
    Instant from = now - kMonth;
    if (window == AirWindow::Quarter)
        from = now - kQuarter;
    else if (window == AirWindow::SinceItCame)
        from = shop.now.toInstant(LocalTime{roll.receivedOn});
    else if (window == AirWindow::All)
        from = firstReading(shop, roll);
    return {std::min(from, now - Minutes{1}), now};
}

} // namespace holdfast::app

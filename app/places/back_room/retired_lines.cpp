// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/retired_lines.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class RetiredWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)
};

} // namespace

QString nameOf(const BlankStyle& style) {
    return words(style.name);
}

QString nameOf(const Film& film) {
    return words(film.name());
}

QString nameOf(const Press& press) {
    return words(press.name);
}

QString nameOf(const StoragePlace& place) {
    return words(place.name);
}

void addHeading(RoomSheet& sheet, const QString& words) {
    RoomLine line;
    line.isHeading = true;
    line.name = words;
    sheet.lines.append(line);
}

QString retiredHeading() {
    return RetiredWords::tr("Retired");
}

void markRetired(RoomLine& line) {
    line.stateIcon = QStringLiteral("shelf-away");
    line.state = RetiredWords::tr("retired");
}

} // namespace holdfast::app

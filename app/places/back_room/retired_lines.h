// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is offered for new work, and below it, under a heading of its own, what is retired.

#include "app/places/back_room/room_sheet.h"

#include <QString>

#include <algorithm>
#include <vector>

namespace holdfast::app {

QString nameOf(const BlankStyle& style);
QString nameOf(const Film& film);
QString nameOf(const Press& press);
QString nameOf(const StoragePlace& place);

void addHeading(RoomSheet& sheet, const QString& words);
QString retiredHeading();
void markRetired(RoomLine& line);

// Each by name; answers how many are offered.
template <class Things, class AddLine>
int addOfferedFirst(RoomSheet& sheet, const Things& things, const AddLine& addLine) {
    using Thing = std::remove_cvref_t<decltype(*things.begin())>;
    std::vector<const Thing*> sorted;
    for (const Thing& thing : things)
        sorted.push_back(&thing);
    std::ranges::stable_sort(sorted, {}, [](const Thing* thing) { return nameOf(*thing).toCaseFolded(); });
    std::ranges::stable_partition(sorted, [](const Thing* thing) { return !thing->isRetired; });
    int offered = 0;
    bool isUnderHeading = false;
    for (const Thing* thing : sorted) {
        if (thing->isRetired && !isUnderHeading)
            addHeading(sheet, retiredHeading());
        isUnderHeading = thing->isRetired;
        offered += thing->isRetired ? 0 : 1;
        addLine(*thing);
    }
    return offered;
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Blank styles, films with their recipes, presses with their checks, and fairs.

#include "app/places/back_room/room_sheet.h"

namespace holdfast::app {

RoomSheet stylesSheet(const ReckonedShop& shop);
RoomSheet filmsSheet(const ReckonedShop& shop);
RoomSheet pressesSheet(const ReckonedShop& shop);
RoomSheet fairsSheet(const ReckonedShop& shop);

} // namespace holdfast::app

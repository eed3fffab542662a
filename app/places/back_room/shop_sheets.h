// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shop's own numbers, in three sections. Each heading leads to the form of its part.

#include "app/places/back_room/room_sheet.h"

namespace holdfast::app {

RoomSheet shopSheet(const ReckonedShop& shop);
RoomSheet pricesSheet(const ReckonedShop& shop);
RoomSheet workSheet(const ReckonedShop& shop);

} // namespace holdfast::app

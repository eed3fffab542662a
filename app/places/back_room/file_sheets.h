// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shop file's copies, and the laptops that share the shop.

#include "app/places/back_room/room_sheet.h"

namespace holdfast::app {

RoomSheet copiesSheet(const ReckonedShop& shop, const RoomFile& file);
RoomSheet laptopsSheet(const ReckonedShop& shop, const RoomFile& file);

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What belongs to this computer and not to the shop: its printers, its scanner, how large its text is, and
// how loud the end of a count at the press is.

#include "app/places/back_room/room_sheet.h"

namespace holdfast::app {

RoomSheet computerSheet(const RoomFile& file);

} // namespace holdfast::app

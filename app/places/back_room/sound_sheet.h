#pragma once
// How loud the end of a count at the press is on this laptop.

#include "app/places/back_room/room_sheet.h"

namespace holdfast::app {

RoomSheet soundSheet(const RoomFile& file);

} // namespace holdfast::app

#pragma once
// The printers of this machine, and which of them takes labels and which sheets.

#include "app/places/back_room/room_sheet.h"

namespace holdfast::app {

RoomSheet printersSheet(const RoomFile& file);

} // namespace holdfast::app

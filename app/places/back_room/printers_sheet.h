// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The printers of this computer, and which of them takes labels and which sheets.

#include "app/places/back_room/room_sheet.h"

namespace holdfast::app {

RoomSheet printersSheet(const RoomFile& file);
// A label and a sheet with rulers to be measured.
QVector<RoomAct> testPapers();

} // namespace holdfast::app

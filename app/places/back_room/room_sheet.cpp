// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/room_sheet.h"

#include "app/places/back_room/computer_sheet.h"
#include "app/places/back_room/file_sheets.h"
#include "app/places/back_room/printers_sheet.h"
#include "app/places/back_room/shop_sheets.h"
#include "app/places/back_room/tools_sheets.h"

namespace holdfast::app {

RoomSheet roomSheet(RoomSection section, const ReckonedShop& shop, const RoomFile& file) {
    switch (section) {
    case RoomSection::Shop:
        return shopSheet(shop);
    case RoomSection::Prices:
        return pricesSheet(shop);
    case RoomSection::Work:
        return workSheet(shop);
    case RoomSection::Styles:
        return stylesSheet(shop);
    case RoomSection::Films:
        return filmsSheet(shop);
    case RoomSection::Presses:
        return pressesSheet(shop);
    case RoomSection::Fairs:
        return fairsSheet(shop);
    case RoomSection::Copies:
        return copiesSheet(shop, file);
    case RoomSection::Laptops:
        return laptopsSheet(shop, file);
    case RoomSection::Computer:
        return computerSheet(file);
    case RoomSection::Printers:
        return printersSheet(file);
    }
    return {};
}

} // namespace holdfast::app

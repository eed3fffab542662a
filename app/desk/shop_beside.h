// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The open shop on a second connection, for one long action on a thread of its own (see
// db::Shop::openBeside), and the shop reckoned there from what the action left.
//
//     auto beside = ShopBeside::open(desk.file(), known);  // known = desk.known(), from the interface thread
//     db::importReadings((*beside)->file(), …);
//     desk.takeOver((*beside)->written());                 // on the interface thread

#include "core/film/roll_condition.h"
#include "core/shop/reckoned_shop.h"
#include "db/journal/shop.h"

#include <memory>
#include <optional>
#include <vector>

namespace holdfast::app {

// What the window knows as the action begins.
struct KnownBefore {
    Now now;
    std::optional<ClimateHistory> climate; // none: not read yet
    std::vector<GarmentId> orderShown;     // of the day's plan
};

// What actions in the background changed, and the shop as it is now with the sums over its readings: a
// million of them are summed up, and a thousand decals allotted, in more than a moment.
struct WrittenBeside {
    db::ChangedTables touched;
    std::shared_ptr<const ReckonedShop> shop; // none: it could not be reckoned
    ClimateReckoner reckoner;
};

class ShopBeside {
public:
    // REQUIRES: a window's shop with a file, which outlives it.
    static Result<std::unique_ptr<ShopBeside>> open(const db::Shop& window, KnownBefore known);

    db::Shop& file() { return *m_file; }

    // After the actions; still on their thread.
    WrittenBeside written();

private:
    ShopBeside(std::unique_ptr<db::Shop> file, KnownBefore known);

    std::unique_ptr<db::Shop> m_file;
    KnownBefore m_known;
    db::ChangedTables m_touched;
};

} // namespace holdfast::app

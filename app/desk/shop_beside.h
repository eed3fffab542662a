#pragma once
// The open shop on a second connection, for one long action on a thread of its own (see
// db::Shop::openBeside).
//
//     auto beside = ShopBeside::open(desk.file(), now);
//     db::importReadings((*beside)->file(), …);
//     desk.takeOver((*beside)->written());  // on the interface thread

#include "core/film/roll_condition.h"
#include "core/shop/reckoned_shop.h"
#include "db/journal/shop.h"

#include <memory>

namespace holdfast::app {

// What an action beside the window changed, and the readings as they now stand with the sums over them: a
// million of them are loaded and summed up in more than a moment.
struct WrittenBeside {
    db::ChangedTables touched;
    bool isReckoned = false; // the readings could be loaded
    ClimateHistory climate;
    ClimateReckoner reckoner;
};

class ShopBeside {
public:
    // REQUIRES: a window's shop with a file, which outlives it.
    static Result<std::unique_ptr<ShopBeside>> open(const db::Shop& window, const Now& now);

    db::Shop& file() { return *m_file; }

    // After the action; still on its thread.
    WrittenBeside written();

private:
    ShopBeside(std::unique_ptr<db::Shop> file, const Now& now);

    std::unique_ptr<db::Shop> m_file;
    Now m_now;
    db::ChangedTables m_touched;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_shop.h"

#include "db/demo/demo_blanks.h"
#include "db/demo/demo_climate.h"
#include "db/demo/demo_films.h"
#include "db/demo/demo_orders.h"
#include "db/demo/demo_script.h"
#include "db/demo/demo_work.h"
#include "db/demo/demo_workshop.h"
#include "db/disk/wall_clock.h"
#include "db/journal/backup.h"

namespace holdfast::db {
namespace {

constexpr Seconds kTimeOfDay = demo::clockAt(9, 40);

// The oldest roll was made in the year before, and the program knows no day before 2000.
const LocalDate kEarliest = localDate(2002, 1, 1);

void write(demo::Script& script) {
    demo::writeWorkshop(script);
    demo::writeClimate(script);
    demo::writeStyles(script);
    demo::writeFilms(script);
    demo::writeRolls(script);
    demo::writeRail(script);
    demo::writeOrders(script);
    demo::writeEarlierWork(script);
    demo::writeThisMorning(script);
}

} // namespace

Now demoNow(LocalDate on) {
    const LocalTime local = LocalTime{on} + kTimeOfDay;
    const Instant asIfUtc{local.time_since_epoch()};
    const Instant guess = asIfUtc - wallOffsetAt(asIfUtc);
    const auto offset = wallOffsetAt(guess);
    return {asIfUtc - offset, offset};
}

Result<Done> makeDemoShop(const std::filesystem::path& path, LocalDate on) {
    if (on < kEarliest)
        return fieldError("on", said("The demo can be made for any day from 1 Jan 2002."));
    try {
        demo::Script script{demoNow(on)};
        write(script);
        script.play();
        // Made in memory and copied whole, so that no file is ever half a shop.
        return backup(script.shop(), path);
    } catch (const demo::Stopped& stopped) {
        return stopped.error;
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_workshop.h"

#include "db/actions/fair_actions.h"
#include "db/actions/press_actions.h"
#include "db/actions/shop_actions.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <array>

namespace holdfast::db::demo {
namespace {

using namespace literals;

constexpr const char* kFair = "Saltmarsh Makers’ Market";
constexpr std::array kFairDays{-74, -53, -32, -18, -11, -4};
constexpr int kNextFair = 1;
constexpr OpeningHours kStallHours{Minutes{9 * 60 + 30}, Minutes{15 * 60 + 30}};

// Orders of earlier years are in a paper book.
constexpr std::int64_t kFirstOrderNumber = 388;

void change(Script& script, const std::function<void(ShopSettings&)>& what) {
    ShopSettings settings = loadSettings(script.shop().connection());
    what(settings);
    done(changeSettings(script.shop(), settings));
}

// Closed on Sundays, unless the day that is shown is one. One sells at the fairs while the other presses, so
// that it is open on their days, too.
void openTheShop(Script& script) {
    change(script, [&](ShopSettings& settings) {
        settings.shopName = "Tern & Thimble";
        settings.collectAt = "The Net Loft, 4 Creek Lane, 10:00–17:00, not on Sundays";
        settings.whenEdgeLifts = "Bring or post it back within a year and we press it again, free.";
        settings.depositPercent = 25;
        const OpeningHours hours{Minutes{8 * 60 + 30}, Minutes{17 * 60}};
        const unsigned shown = std::chrono::weekday{script.day(0)}.c_encoding();
        for (unsigned weekday = 0; weekday < settings.week.size(); ++weekday) {
            settings.week[weekday].reset();
            if (weekday != 0 || weekday == shown)
                settings.week[weekday] = hours;
        }
    });
    done(script.shop().act([](Writer& writer) -> Result<Done> {
        writer.connection().run("UPDATE seat_here SET next_order_number = ?1", kFirstOrderNumber);
        return Done{};
    }));
}

void setUpBenchPress(Script& script) {
    Press press;
    press.name = "Bench press";
    press.platenWidth = 380_mm;
    press.platenHeight = 380_mm;
    press.heatsPerMinute = 5;
    press.coolsPerMinute = 2;
    script.named.presses["Bench press"] = done(addPress(script.shop(), press));
}

void setUpCapPress(Script& script) {
    Press press;
    press.name = "Cap press";
    press.platenWidth = 150_mm;
    press.platenHeight = 90_mm;
    press.hasSmallPlaten = true;
    press.heatsPerMinute = 8;
    press.coolsPerMinute = 3;
    press.checkEvery = Days{14};
    script.named.presses["Cap press"] = done(addPress(script.shop(), press));
}

void check(Script& script, const std::string& press, Celsius set, const std::vector<Celsius>& readings) {
    done(recordPressCheck(script.shop(), script.named.presses.at(press), set, readings, "Ines"));
}

void writeChecks(Script& script) {
    const auto benchCheck = [&script](int day, std::vector<Celsius> readings) {
        script.at(day, clockAt(8, 45), [&script, readings = std::move(readings)] {
            check(script, "Bench press", 150_C, readings);
        });
    };
    benchCheck(-90, {149_C, 150_C, 148_C, 151_C, 152_C, 150_C, 149_C, 150_C, 148_C});
    benchCheck(-62, {150_C, 151_C, 149_C, 152_C, 152_C, 151_C, 149_C, 150_C, 148_C});
    benchCheck(-34, {149_C, 150_C, 149_C, 151_C, 152_C, 151_C, 148_C, 150_C, 149_C});
    benchCheck(-5, {149_C, 151_C, 149_C, 151_C, 153_C, 151_C, 149_C, 150_C, 149_C});
    // Bought second-hand, and not right yet.
    script.at(-20, clockAt(16, 20),
              [&script] { check(script, "Cap press", 140_C, {129_C, 132_C, 136_C, 138_C, 137_C}); });
}

void putInTheList(Script& script, int day) {
    const bool isAtAdvent = day >= -18; // the market asks more for its tables then
    Fair fair;
    fair.name = kFair;
    fair.firstDay = fair.lastDay = script.day(day);
    fair.hours = kStallHours;
    fair.stallCost = Money{isAtAdvent ? 1900 : 1400};
    fair.otherCosts = Money{350};
    fair.worked = Hours{8}; // laid out before, packed away after
    fair.note = day == kNextFair ? "table 14, next to the door" : "";
    done(addFair(script.shop(), fair));
}

void writeFairs(Script& script) {
    for (const int day : kFairDays)
        script.at(std::max(kFirstDay, day - 9), clockAt(17, 15),
                  [&script, day] { putInTheList(script, day); });
    script.at(kNextFair - 9, clockAt(17, 20), [&script] { putInTheList(script, kNextFair); });
    for (const int day : kFairDays) {
        script.at(day, clockAt(7, 40),
                  [&script] { change(script, [](ShopSettings& shop) { shop.fairName = kFair; }); });
        script.at(day, clockAt(18, 10),
                  [&script] { change(script, [](ShopSettings& shop) { shop.fairName.clear(); }); });
    }
}

} // namespace

void writeWorkshop(Script& script) {
    script.at(kFirstDay, clockAt(8, 0), [&script] { openTheShop(script); });
    script.at(kFirstDay, clockAt(8, 10), [&script] { setUpBenchPress(script); });
    script.at(-24, clockAt(15, 30), [&script] { setUpCapPress(script); });
    writeChecks(script);
    writeFairs(script);
}

} // namespace holdfast::db::demo

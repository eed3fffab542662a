// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/settings.h"
#include "core/orders/promise_hours.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

const LocalDate kWednesday = localDate(2026, 11, 25);
const LocalDate kSaturday = localDate(2026, 11, 28);

TEST(Settings, NewShopPressesOnWeekdays) {
    const ShopSettings settings;
    for (int day = 0; day < 7; ++day) {
        const LocalDate date = localDate(2026, 11, 22) + Days{day}; // from a Sunday on
        EXPECT_EQ(settings.isOpenOn(date), day >= 1 && day <= 5) << isoDate(date);
    }
    EXPECT_EQ(settings.hoursOn(kWednesday), (OpeningHours{Minutes{9 * 60}, Minutes{17 * 60}}));
}

TEST(Settings, HoursOfADayAreItsOwn) {
    ShopSettings settings;
    settings.week[6] = OpeningHours{Minutes{10 * 60}, Minutes{13 * 60}};
    EXPECT_EQ(settings.hoursOn(kSaturday)->closes, Minutes{13 * 60});
}

TEST(Settings, ClosedDayHasNoHours) {
    ShopSettings settings;
    settings.closedDays = {kSaturday, kWednesday};
    EXPECT_FALSE(settings.isOpenOn(kWednesday));
    EXPECT_TRUE(settings.isOpenOn(kWednesday + Days{1}));
}

TEST(Settings, WorkOutsideOpeningHoursIsCountedAcrossDays) {
    const ShopSettings settings; // 9 to 17 from Monday to Friday
    const auto on = [](LocalDate date, int hour, int minute) {
        return LocalTime{date} + Hours{hour} + Minutes{minute};
    };
    const LocalDate friday = kWednesday + Days{2};
    const auto outside = [&](LocalTime from, LocalTime until) {
        const Now now{Instant{from.time_since_epoch()}};
        return outsideHours(settings, now, now.toInstant(until));
    };
    EXPECT_EQ(outside(on(kWednesday, 16, 0), on(kWednesday, 17, 0)), Seconds{0});
    EXPECT_EQ(outside(on(kWednesday, 16, 0), on(kWednesday, 17, 20)), Minutes{20});
    EXPECT_EQ(outside(on(kWednesday, 8, 30), on(kWednesday, 9, 30)), Minutes{30});
    // 17:00 to 9:00, and 30 minutes on the day itself.
    EXPECT_EQ(outside(on(kWednesday, 8, 30), on(kWednesday + Days{1}, 9, 30)), Hours{16} + Minutes{30});
    EXPECT_EQ(outside(on(friday, 17, 0), on(friday + Days{3}, 9, 0)), Hours{64});
    EXPECT_EQ(outside(on(kWednesday, 18, 0), on(kWednesday, 17, 0)), Seconds{0});
}

TEST(Settings, HoursThatEndBeforeTheyBeginAreNone) {
    ShopSettings settings;
    settings.week[3] = OpeningHours{Minutes{600}, Minutes{600}};
    EXPECT_FALSE(settings.isOpenOn(kWednesday));
    settings.week[3] = OpeningHours{Minutes{600}, Minutes{540}};
    EXPECT_FALSE(settings.isOpenOn(kWednesday));
}

// Common practice, no source; as product.md names them.
TEST(Settings, DefaultsAreCommonPractice) {
    const ShopSettings settings;
    EXPECT_EQ(settings.restBeforeWash, Hours{24});
    EXPECT_EQ(settings.betterRest, Hours{72});
    EXPECT_EQ(settings.depositPercent, 0);
    EXPECT_FALSE(settings.depositHolds);
}

} // namespace
} // namespace holdfast::test

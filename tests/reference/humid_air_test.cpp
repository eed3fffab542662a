// SPDX-License-Identifier: GPL-3.0-or-later
// Damp air: the Magnus formula of WMO-No. 8 (constants read second-hand) against its own figures, and against
// PsychroLib 1.1.1 and the ASHRAE 2017 Fundamentals, ch. 1 (second-hand, from PsychroLib's own tests), from
// which a Magnus formula may depart a little.

#include "core/film/air.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

struct HumidAirRow {
    double temperature;
    double humidity;
    double wmoDewPoint;        // computed from WMO's formula
    double psychroLibDewPoint; // computed with PsychroLib 1.1.1
    double psychroLibAbsolute; // g/m³, the same
};

constexpr HumidAirRow kRows[] = {
    {20, 50, 9.255174598981256, 9.272392288187499, 8.643300018056816},
    {25, 60, 16.693149006198954, 16.701131854221103, 13.818918356473695},
    {30, 80, 26.168845923147636, 26.168593239278714, 24.27846402575212},
    {10, 90, 8.433938261775507, 8.437213810535003, 8.457234045459579},
};

TEST(ReferenceHumidAir, DewPointFollowsWmo) {
    for (const HumidAirRow& row : kRows)
        EXPECT_NEAR(dewPoint({row.temperature}, {row.humidity}).value, row.wmoDewPoint, 1e-9);
}

TEST(ReferenceHumidAir, DewPointLiesWithinTwoHundredthsOfPsychroLib) {
    for (const HumidAirRow& row : kRows)
        EXPECT_NEAR(dewPoint({row.temperature}, {row.humidity}).value, row.psychroLibDewPoint, 0.02);
}

// ρ = e/(R·T) with the gas constant of water vapour, 461.51 J/(kg·K), of which 2.16679 g·K/J is the inverse.
TEST(ReferenceHumidAir, AbsoluteHumidityIsThatOfAnIdealGas) {
    for (const HumidAirRow& row : kRows) {
        const double pressure = saturationPressure({row.temperature}) * row.humidity / 100;
        EXPECT_NEAR(absoluteHumidity({row.temperature}, {row.humidity}),
                    2.16679 * pressure / (row.temperature + 273.15), 1e-9);
    }
}

TEST(ReferenceHumidAir, AbsoluteHumidityLiesWithinHalfAPercentOfPsychroLib) {
    for (const HumidAirRow& row : kRows)
        EXPECT_NEAR(absoluteHumidity({row.temperature}, {row.humidity}), row.psychroLibAbsolute,
                    row.psychroLibAbsolute * 0.005);
}

// ASHRAE: 5 °C 872.6 Pa, 25 °C 3169.7 Pa, 50 °C 12351.3 Pa.
TEST(ReferenceHumidAir, SaturationPressureLiesNearAshrae) {
    EXPECT_NEAR(saturationPressure({5}), 872.6, 872.6 * 0.0035);
    EXPECT_NEAR(saturationPressure({25}), 3169.7, 3169.7 * 0.0035);
    EXPECT_NEAR(saturationPressure({50}), 12351.3, 12351.3 * 0.0035);
    EXPECT_DOUBLE_EQ(saturationPressure({0}), 611.2); // WMO's own constant
}

} // namespace
} // namespace holdfast

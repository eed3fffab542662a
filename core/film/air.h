// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Physics of damp air and of temperature over time.

#include "core/facts/climate.h"
#include "core/trade/units.h"

#include <optional>
#include <span>

namespace holdfast {

// Magnus formula with the constants of WMO-No. 8: e_s = 611.2·exp(17.62·T/(243.12+T)) Pa over water.
double saturationPressure(Celsius temperature);
Celsius dewPoint(Celsius temperature, Humidity humidity);
double absoluteHumidity(Celsius temperature, Humidity humidity); // g/m³

// T_K = (ΔH/R) / −ln(mean of e^(−ΔH/(R·T))), ΔH/R = 10 000 K (USP <1160>), each reading weighted alike, or
// by time along the lines between readings (gaps over the allowed one left out). None without readings.
std::optional<Celsius> meanKineticTemperature(std::span<const Celsius> readings);
std::optional<Celsius> meanKineticTemperature(std::span<const ClimateReading> window);

} // namespace holdfast

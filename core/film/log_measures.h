// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One temperature or humidity as a logger writes it: a number, perhaps with its unit after it.

#include "core/trade/units.h"

#include <optional>
#include <string_view>

namespace holdfast {

// A unit after the number counts before the header's; `isFahrenheit` says afterwards which it was.
std::optional<Celsius> readLoggedTemperature(std::string_view field, bool decimalComma, bool& isFahrenheit);

// In percent, 0 to 100.
std::optional<Humidity> readLoggedHumidity(std::string_view field, bool decimalComma);

} // namespace holdfast

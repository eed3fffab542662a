// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The climate of a storage place: readings of temperature and humidity, taken as straight lines between
// neighbours. Where two readings lie further apart than the allowed gap, the time between is unrecorded.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/units.h"

#include <map>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

struct ClimateReading {
    Instant at;
    Celsius temperature;
    Humidity humidity;
    bool hasHumidity = true; // false: nobody measured it, and `humidity` is nothing

    std::optional<Humidity> knownHumidity() const {
        return hasHumidity ? std::optional{humidity} : std::nullopt;
    }
    bool operator==(const ClimateReading&) const = default;
};

inline constexpr Hours kAllowedGap{72};

inline ClimateReading readingOf(Instant at, Celsius temperature, std::optional<Humidity> humidity) {
    return {at, temperature, humidity.value_or(Humidity{}), humidity.has_value()};
}

// Sorted by time, one reading an instant.
using ClimateSeries = std::vector<ClimateReading>;

// The readings that have a humidity: it goes in straight lines between them, whatever was read between.
ClimateSeries withHumidity(const ClimateSeries& series);
bool allHaveHumidity(const ClimateSeries& series);

// Shared, never changed: a screen keeps the one it was handed.
using ClimateHistory = std::map<PlaceId, std::shared_ptr<const ClimateSeries>>;

} // namespace holdfast

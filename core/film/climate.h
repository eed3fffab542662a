#pragma once
// The climate of a storage place: readings of temperature and humidity, taken as straight lines between
// neighbours. Where two readings lie further apart than the allowed gap, the time between is unrecorded.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/units.h"

#include <map>
#include <memory>
#include <span>
#include <vector>

namespace holdfast {

struct ClimateReading {
    Instant at;
    Celsius temperature;
    Humidity humidity;

    bool operator==(const ClimateReading&) const = default;
};

inline constexpr Hours kAllowedGap{72};

// Sorted by time, one reading an instant.
using ClimateSeries = std::vector<ClimateReading>;

// Shared, never changed: a screen keeps the one it was handed.
using ClimateHistory = std::map<PlaceId, std::shared_ptr<const ClimateSeries>>;

} // namespace holdfast

#pragma once
// Reads a log of temperature and humidity as a data logger writes it: text with a time, a temperature and a
// humidity in each line, commas, semicolons or tabs between, a decimal point or comma.

#include "core/film/climate.h"
#include "core/trade/result.h"

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

struct ClimateLog {
    ClimateSeries readings;          // sorted by time, one an instant
    std::size_t duplicates = 0;      // lines whose time stood there already: the first counts
    std::size_t gaps = 0;            // stretches longer than the allowed gap
    bool wasFahrenheit = false;
    std::vector<std::string> skipped; // "Line 7: “n/a” is no temperature.", at most 20
    std::size_t skippedCount = 0;
};

// Times without a zone are the workshop's local time. A header line names columns in any order; without one
// they are time, temperature, humidity. °F in the header is turned to °C. Humidity 0–1 is refused as a wrong
// unit, so are temperatures beyond −40…80 °C in more than one line of ten; an error names the line.
// `progress` gets the share done and answers false to stop; may be empty.
Result<ClimateLog> readClimateLog(std::string_view text, std::chrono::seconds localOffset,
                                  const std::function<bool(double)>& progress = {});

} // namespace holdfast

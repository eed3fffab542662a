// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Reads a log of temperature and humidity, or of temperature alone, as a data logger writes it: text with a
// time, a temperature and a humidity in each line, commas, semicolons or tabs between, a decimal point or
// comma.

#include "core/facts/climate.h"
#include "core/film/log_time.h"
#include "core/trade/offset_at.h"
#include "core/trade/result.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

// A date of the log that exists both ways.
struct DoubtfulDate {
    std::string written; // "03/04/2026"
    LocalDate dayFirst;
    LocalDate monthFirst;
};

struct ClimateLog {
    ClimateSeries readings;          // sorted by time, one an instant
    std::size_t duplicates = 0;      // lines whose time was there already: the first counts
    std::size_t gaps = 0;            // stretches longer than the allowed gap
    std::size_t withoutHumidity = 0; // readings of temperature alone
    bool wasFahrenheit = false;
    std::optional<DateOrder> dateOrder; // of its dates such as 03/04/2026; none where it has no such dates
    std::optional<DoubtfulDate> doubtfulDate; // where the order is no more than likely
    std::vector<Sentence> skipped;            // "Line 7: “n/a” is no temperature.", at most 20
    std::size_t skippedCount = 0;

    // Nothing in the log shows the order of day and month: no reading was taken from it.
    bool mustBeAsked() const { return doubtfulDate && !dateOrder; }
};

// Times without a zone are local times of the place, over the changes of its clocks too (log_clock.h). A
// header line names columns in any order; without one they are time, temperature, humidity. °F in the header
// is turned to °C. Humidity 0–1 is refused as a wrong unit, so are temperatures beyond −40…80 °C in more than
// one line of ten; an error names the line. The file may be written in UTF-8, UTF-16 or a code of one byte a
// letter. `progress` gets the share done and answers false to stop; may be empty. Whether day or month comes
// first in its dates is found in the log itself unless a person chose.
Result<ClimateLog> readClimateLog(std::string_view file, const OffsetAt& offsetAt,
                                  const std::function<bool(double)>& progress = {},
                                  std::optional<DateOrder> dateOrder = {});

} // namespace holdfast

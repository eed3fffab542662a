// SPDX-License-Identifier: GPL-3.0-or-later
// Logs of temperature and humidity, as any logger may write them.
#include "core/film/climate_log.h"

#include "tests/long/fuzz/fuzz_target.h"

#include <algorithm>

namespace holdfast::fuzz {
namespace {

void readLog(std::string_view input) {
    for (const auto order : {std::optional<DateOrder>{}, std::optional{DateOrder::DayFirst}}) {
        const auto log = readClimateLog(input, alwaysAhead(Hours{1}), {}, order);
        if (!log.ok()) {
            require(!log.error().message.english().empty(), "a refusal has words");
            continue;
        }
        require(std::ranges::adjacent_find(log->readings, std::ranges::greater_equal{},
                                           &ClimateReading::at) == log->readings.end(),
                "readings are sorted, one an instant");
        require(log->skipped.size() <= 20 && log->skipped.size() <= log->skippedCount,
                "what is skipped is counted");
    }
}

const Registered registeredLog{"climate_log", readLog};

} // namespace
} // namespace holdfast::fuzz

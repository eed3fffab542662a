// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/air_reckoning.h"

#include <algorithm>
#include <utility>

namespace holdfast::app {

namespace {

constexpr std::size_t kAtOnce = 20'000; // readings

// The readings that matter to a window, with one to each side.
ClimateSeries sliced(const ClimateSeries& series, const ClimateWindow& window) {
    auto first = std::ranges::lower_bound(series, window.from, {}, &ClimateReading::at);
    auto last = std::ranges::upper_bound(series, window.to, {}, &ClimateReading::at);
    if (first != series.begin())
        --first;
    if (last != series.end())
        ++last;
    return {first, last};
}

} // namespace

std::optional<AirAnswer> airOf(const AirAsked& asked, const std::function<bool()>& shouldStop) {
    const auto figures = figuresOf(*asked.readings, asked.window, asked.limits, shouldStop);
    if (!figures)
        return std::nullopt;
    const ClimateSeries readings = sliced(*asked.readings, asked.window);
    const auto spells = [&](Measure measure, double low, double high) {
        return ExposureCurve(readings, measure, low, high).spellsBetween(asked.window.from, asked.window.to);
    };
    const StorageLimits& limits = asked.limits;
    return AirAnswer{
        *figures, spells(Measure::Humidity, limits.humidity.low.percent, limits.humidity.high.percent),
        spells(Measure::Temperature, limits.temperature.low.value, limits.temperature.high.value)};
}

void AirReckoning::begin(std::vector<AirAsked> asked) {
    m_beside.drop();
    std::size_t readings = 0;
    for (const AirAsked& one : asked)
        readings += readingsIn(*one.readings, one.window);
    const auto answerAll = [asked = std::move(asked)](const std::function<bool()>& shouldStop) {
        std::vector<AirAnswer> answers;
        for (const AirAsked& one : asked)
            if (auto answer = airOf(one, shouldStop))
                answers.push_back(std::move(*answer));
        return answers;
    };
    if (readings <= kAtOnce) {
        emit reckoned(answerAll({}));
        return;
    }
    m_beside.begin([answerAll](auto& reporter) { return answerAll([&] { return reporter.shouldStop(); }); },
                   [this](const std::vector<AirAnswer>& answers) { emit reckoned(answers); });
}

} // namespace holdfast::app

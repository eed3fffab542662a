// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Days at the press made at random from a fixed seed.

#include "tests/core/day_plan_builders.h"

#include <algorithm>
#include <random>

namespace holdfast::press_days {

class RandomDays {
public:
    explicit RandomDays(unsigned seed)
        : m_random(seed) {}

    std::int64_t between(std::int64_t low, std::int64_t high) {
        return std::uniform_int_distribution<std::int64_t>{low, high}(m_random);
    }

    bool oneIn(std::int64_t times) { return between(1, times) == 1; }

    // As routes are: prepared by hand, preheated, placed, pressed, cooled, peeled, perhaps pressed again.
    std::vector<RouteStep> steps() {
        const double temperatures[] = {130, 150, 160};
        double temperature = temperatures[between(0, 2)];
        std::vector<RouteStep> steps;
        if (!oneIn(3))
            steps.push_back(byHand(between(1, 20)));
        if (oneIn(2)) {
            steps.push_back(pressed(temperature, between(1, 15), between(0, 5)));
            steps.back().kind = StepKind::Preheat;
        }
        const std::int64_t layers = between(1, 3);
        for (std::int64_t layer = 0; layer < layers; ++layer) {
            if (oneIn(8))
                temperature = temperatures[between(0, 2)];
            if (oneIn(2))
                steps.push_back(byHand(between(1, 25), StepKind::PlaceDecal));
            steps.push_back(pressed(temperature, between(1, 20), between(0, 10)));
            if (oneIn(2))
                steps.push_back(cooled(between(1, 90)));
            if (oneIn(2))
                steps.push_back(byHand(between(1, 10), StepKind::PeelCarrier));
        }
        if (oneIn(20)) {
            steps.back().waiting = Seconds{between(0, 9)}; // a step with everything in it
            steps.back().attended = Seconds{between(0, 9)};
        }
        return steps;
    }

    PlanRequest day(std::size_t garments, bool manyPresses) {
        std::vector<std::vector<RouteStep>> all;
        for (std::size_t garment = 0; garment < garments; ++garment)
            all.push_back(steps());
        std::optional<double> now;
        if (!oneIn(4))
            now = oneIn(2) ? 150.0 : 130.0;
        PlanRequest request = aDay(std::move(all), now);
        if (manyPresses) {
            request.platens.push_back(platen(2, oneIn(2) ? std::nullopt : std::optional{160.0}));
            request.platens[1].press.coolsPerMinute = 15;
        }
        const auto span = static_cast<std::int64_t>(garments) * 120;
        for (PressJob& job : request.jobs) {
            job.due = after(between(0, span));
            job.weight = static_cast<double>(between(1, 3));
            job.isUnderway = oneIn(12);
            job.hasBeenOnPlaten = job.isUnderway && job.garment.value % 2 == 0;
            job.isOnPlaten = job.isUnderway && job.garment.value % 4 == 0;
            if (manyPresses && oneIn(4))
                job.press = PressId{between(1, 2)};
        }
        return request;
    }

    std::vector<std::size_t> order(const PlanRequest& request) {
        std::vector<std::size_t> order = asGiven(request);
        std::ranges::shuffle(order, m_random);
        return order;
    }

private:
    std::mt19937 m_random;
};

} // namespace holdfast::press_days

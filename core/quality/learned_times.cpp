// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/learned_times.h"

#include "core/quality/figures.h"
#include "core/quality/holm.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <iterator>

namespace holdfast {

namespace {

Seconds HandTimes::* timeOf(StepKind kind) {
    switch (kind) {
    case StepKind::ReadTag:
        return &HandTimes::readTag;
    case StepKind::LintRoll:
        return &HandTimes::lintRoll;
    case StepKind::WayRound:
        return &HandTimes::wayRound;
    case StepKind::PlaceDecal:
        return &HandTimes::placeDecal;
    case StepKind::PeelCarrier:
        return &HandTimes::peel;
    case StepKind::Turn:
        return &HandTimes::turn;
    case StepKind::LookForTexture:
        return &HandTimes::look;
    case StepKind::Preheat:
    case StepKind::Press:
    case StepKind::Cool:
    case StepKind::FinishFront:
    case StepKind::FinishBack:
        break;
    }
    return nullptr;
}

struct Times {
    LearnedTime learned;
    std::vector<double> differences; // log(done / planned)

    double planned() const { return static_cast<double>(std::max(learned.planned, Seconds{1}).count()); }

    void add(const StepDone& step) {
        if (differences.size() == kLatestToJudge)
            return;
        const Seconds took = step.until - step.from;
        const int decals = std::max(step.decals, 1);
        if (took <= Seconds{0})
            ++learned.atOnce;
        else if (std::chrono::floor<Days>(step.from) != std::chrono::floor<Days>(step.until))
            ++learned.overMidnight;
        else if (took > std::max(kLongestByHand, learned.planned * kMostTimesPlanned) * decals)
            ++learned.paused;
        else
            differences.push_back(std::log(static_cast<double>(took.count()) / decals / planned()));
    }

    void estimate() {
        learned.times = differences.size();
        if (differences.empty())
            return;
        const Centre centre = centreOf(differences, kOnceInTwenty);
        learned.done = Centre{planned() * std::exp(centre.estimate), planned() * std::exp(centre.low),
                              planned() * std::exp(centre.high)};
        learned.isJudged = learned.times >= static_cast<std::size_t>(kFewestToJudge);
        if (learned.isJudged)
            learned.chance = chanceOfSignedRanks(differences);
    }
};

std::optional<Seconds> worthTaking(const LearnedTime& learned) {
    const Seconds proposed{
        std::clamp<std::int64_t>(std::llround(learned.done->estimate), kLeastHandSeconds, kMostHandSeconds)};
    const std::int64_t apart = std::abs((proposed - learned.planned).count());
    return apart >= 1 && apart * 10 >= learned.planned.count() ? std::optional{proposed} : std::nullopt;
}

} // namespace

std::vector<LearnedTime> learnedTimes(std::span<const StepDone> done, const HandTimes& planned) {
    std::vector<Times> all;
    for (const HandTime& hand : kAllHandTimes)
        all.emplace_back().learned = LearnedTime{.hand = hand, .planned = planned.*hand.time};
    for (const StepDone& step : done)
        if (const auto time = timeOf(step.kind))
            std::ranges::find(all, time, [](const Times& each) { return each.learned.hand.time; })->add(step);

    std::vector<double> chances;
    for (Times& each : all) {
        each.estimate();
        if (each.learned.isJudged)
            chances.push_back(each.learned.chance);
    }
    const std::vector<bool> beyond = beyondChance(chances);
    std::vector<LearnedTime> learned;
    std::size_t judged = 0;
    for (Times& each : all) {
        if (each.learned.isJudged && beyond[judged++])
            each.learned.proposed = worthTaking(each.learned);
        learned.push_back(std::move(each.learned));
    }
    return learned;
}

} // namespace holdfast

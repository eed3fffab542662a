#include "core/quality/survival.h"

#include "core/quality/share_interval.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

// Its ends, on log(−log S). Of none and of all they are what is known.
void setEnds(SurvivalStep& step, double greenwood) {
    step.standardError = step.share * std::sqrt(greenwood);
    if (step.share <= 0) {
        step.low = step.high = step.standardError = 0;
        return;
    }
    const double logShare = std::log(step.share);
    const double reach = kTwoSided95 * std::sqrt(greenwood) / -logShare;
    step.low = std::exp(logShare * std::exp(reach));
    step.high = std::exp(logShare * std::exp(-reach));
}

} // namespace

Survival survivalOf(std::span<const Watched> cases) {
    std::vector<Watched> byTime(cases.begin(), cases.end());
    std::ranges::sort(byTime, {}, &Watched::until);
    Survival survival;
    if (!byTime.empty())
        survival.watchedUntil = byTime.back().until;
    double share = 1;
    double greenwood = 0;
    for (auto from = byTime.begin(); from != byTime.end();) {
        const auto to = std::ranges::upper_bound(from, byTime.end(), from->until, {}, &Watched::until);
        const auto watched = static_cast<std::size_t>(byTime.end() - from);
        const auto faults = static_cast<std::size_t>(std::ranges::count_if(from, to, &Watched::hadFault));
        if (faults > 0) {
            const auto all = static_cast<double>(watched);
            const auto failed = static_cast<double>(faults);
            share *= 1 - failed / all;
            greenwood += failed / (all * (all - failed));
            SurvivalStep& step =
                survival.steps.emplace_back(SurvivalStep{from->until, watched, faults, share, 0, 0, 1});
            setEnds(step, greenwood);
        }
        from = to;
    }
    return survival;
}

SurvivalStep Survival::at(double time) const {
    const auto after = std::ranges::upper_bound(steps, time, {}, &SurvivalStep::at);
    return after == steps.begin() ? SurvivalStep{0, 0, 0, 1, 0, 1, 1} : *std::prev(after);
}

std::optional<double> Survival::median() const {
    const auto half = std::ranges::find_if(steps, [](const SurvivalStep& step) { return step.share <= 0.5; });
    return half == steps.end() ? std::nullopt : std::optional{half->at};
}

} // namespace holdfast

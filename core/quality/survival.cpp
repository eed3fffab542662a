// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/survival.h"

#include "core/quality/share_interval.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

// Its ends, on log(−log S). Where none of those watched last held, S is nothing and Greenwood's sum has no
// end: then the true share may be as large as before the step, times what none of so few may well be of many.
void setEnds(SurvivalStep& step, double greenwood, double highBefore) {
    step.standardError = step.share * std::sqrt(greenwood);
    if (step.share <= 0) {
        step.low = step.standardError = 0;
        step.high = highBefore * shareInterval(0, static_cast<std::int64_t>(step.watched))->high;
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
            const double highBefore = survival.steps.empty() ? 1 : survival.steps.back().high;
            SurvivalStep& step =
                survival.steps.emplace_back(SurvivalStep{from->until, watched, faults, share, 0, 0, 1});
            setEnds(step, greenwood, highBefore);
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

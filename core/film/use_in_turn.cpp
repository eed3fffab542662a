// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/usual_use.h"
#include "core/trade/unit_normal.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <random>
#include <set>

namespace holdfast {

namespace {

using Draws = std::array<double, kDraws>;

constexpr int kStepsBetween = 24;
constexpr std::uint32_t kKeptDraws = 64;
constexpr std::size_t kOfYears = 0; // which draws are whose
constexpr std::size_t kFirstOfUse = 1;

// The middles of kDraws equal shares of the unit normal.
const Draws& evenDraws() {
    static const Draws draws = [] {
        Draws made{};
        for (std::size_t at = 0; at < made.size() / 2; ++at) {
            made[at] = unitNormalQuantile((static_cast<double>(at) + 0.5) / kDraws);
            made[made.size() - 1 - at] = -made[at];
        }
        return made;
    }();
    return draws;
}

Draws shuffled(std::mt19937 random) {
    Draws draws = evenDraws();
    for (std::size_t left = draws.size(); left > 1; --left)
        std::swap(draws[left - 1], draws[random() % left]);
    return draws;
}

// The same each time, whichever films there are; the first ones are kept.
Draws shuffledDraws(std::size_t which) {
    static const std::vector<Draws> kept = [] {
        std::vector<Draws> made;
        for (std::uint32_t at = 0; at < kKeptDraws; ++at)
            made.push_back(shuffled(std::mt19937{at + 1}));
        return made;
    }();
    return which < kept.size() ? kept[which] : shuffled(std::mt19937{static_cast<std::uint32_t>(which) + 1});
}

// The days of a roll in a draw: `year` is how slow film ages then, of the unit normal.
double daysIn(const RollInTurn& roll, double year) {
    const auto usual = static_cast<double>(roll.days.count());
    const Days end = (year < 0 ? roll.daysAtLeast : roll.daysAtMost).value_or(roll.days);
    const double spread = std::abs(static_cast<double>((end - roll.days).count())) / kEightOfTen;
    return std::max(0.0, usual + year * spread);
}

bool areDaysAFact(const RollInTurn& roll) {
    return roll.daysAtLeast.value_or(roll.days) == roll.days &&
           roll.daysAtMost.value_or(roll.days) == roll.days;
}

// What is cut of a film from now until any day, drawn kDraws times: it goes on from day to day from where it
// was, and in a straight line between the days at which it is drawn.
class UseOverTime {
public:
    UseOverTime(const UseRate& rate, std::span<const RollInTurn> rolls) {
        m_days = daysOf(rolls);
        Draws use{};
        double before = 0;
        for (const double days : m_days) {
            const double weeks = (days - before) / 7;
            const Draws more = shuffledDraws(kFirstOfUse + m_until.size());
            for (std::size_t draw = 0; draw < use.size(); ++draw)
                use[draw] += rate.weeklyMean * weeks + rate.weeklySpread * std::sqrt(weeks) * more[draw];
            m_until.push_back(use);
            before = days;
        }
    }

    double until(double days, std::size_t draw) const {
        const auto next = static_cast<std::size_t>(std::ranges::lower_bound(m_days, days) - m_days.begin());
        if (next == m_days.size())
            return m_until.back()[draw];
        if (next == 0 || m_days[next] == days)
            return m_until[next][draw];
        const double share = (days - m_days[next - 1]) / (m_days[next] - m_days[next - 1]);
        return std::lerp(m_until[next - 1][draw], m_until[next][draw], share);
    }

private:
    // Today, the day of each roll, and a few between and beyond where those are an estimate.
    static std::vector<double> daysOf(std::span<const RollInTurn> rolls) {
        std::set<double> days{0};
        double farthest = 0;
        for (const RollInTurn& roll : rolls) {
            days.insert(daysIn(roll, 0));
            if (!areDaysAFact(roll))
                farthest = std::max(farthest, daysIn(roll, evenDraws().back()));
        }
        for (int step = 1; farthest > 0 && step <= kStepsBetween; ++step)
            days.insert(farthest * step / kStepsBetween);
        return {days.begin(), days.end()};
    }

    std::vector<double> m_days;
    std::vector<Draws> m_until;
};

ExpectedUse summedUp(Draws taken) {
    std::ranges::sort(taken);
    double sum = 0;
    for (const double each : taken)
        sum += each;
    const auto share = [&](double of) { // between the two draws that it lies between
        const double place = of * kDraws - 0.5;
        const auto below = static_cast<std::size_t>(place);
        return std::lerp(taken[below], taken[below + 1], place - std::floor(place));
    };
    const Millimetres expected{std::llround(sum / kDraws)};
    return {expected, std::min(expected, Millimetres{std::llround(share(0.1))}),
            std::max(expected, Millimetres{std::llround(share(0.9))})};
}

} // namespace

std::vector<ExpectedUse> expectedUseInTurn(const UseRate& rate, std::span<const RollInTurn> rolls) {
    std::vector<ExpectedUse> uses(rolls.size());
    const auto isUsed = [](const RollInTurn& roll) { return roll.mayBeUsed; };
    if (std::ranges::none_of(rolls, isUsed))
        return uses;
    const UseOverTime use{rate, rolls};
    const Draws years = shuffledDraws(kOfYears);
    Draws gone{}; // to the rolls before
    Millimetres spokenFor;
    bool isFirst = true;
    for (std::size_t at = 0; at < rolls.size(); ++at) {
        const RollInTurn& roll = rolls[at];
        spokenFor += roll.allotted;
        if (!roll.mayBeUsed)
            continue;
        Draws taken{};
        for (std::size_t draw = 0; draw < taken.size(); ++draw) {
            const double cut = use.until(daysIn(roll, years[draw]), draw);
            taken[draw] = std::clamp(cut - static_cast<double>(spokenFor.value) - gone[draw], 0.0,
                                     static_cast<double>(std::max<std::int64_t>(0, roll.free.value)));
            gone[draw] += taken[draw];
        }
        uses[at] = isFirst && areDaysAFact(roll) ? expectedUse(rate, roll.days, spokenFor, roll.free)
                                                 : summedUp(taken);
        isFirst = false;
    }
    return uses;
}

} // namespace holdfast

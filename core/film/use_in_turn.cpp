#include "core/film/usual_use.h"
#include "core/trade/unit_normal.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <random>

namespace holdfast {

namespace {

using Draws = std::array<double, kDraws>;

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

// What is cut of a film from now until each of several days, drawn kDraws times: from day to day it goes on
// from where it was.
class UseOverTime {
public:
    UseOverTime(const UseRate& rate, std::span<const RollInTurn> rolls) {
        for (const RollInTurn& roll : rolls)
            m_until[std::max(roll.days, Days{0})];
        std::mt19937 random{1}; // the same draws each time
        Draws use{};
        Days before{0};
        for (auto& [days, until] : m_until) {
            const double weeks = static_cast<double>((days - before).count()) / 7;
            const Draws more = shuffled(random);
            for (std::size_t draw = 0; draw < use.size(); ++draw)
                use[draw] += rate.weeklyMean * weeks + rate.weeklySpread * std::sqrt(weeks) * more[draw];
            until = use;
            before = days;
        }
    }

    const Draws& until(Days days) const { return m_until.at(std::max(days, Days{0})); }

private:
    static Draws shuffled(std::mt19937& random) {
        Draws draws = evenDraws();
        for (std::size_t left = draws.size(); left > 1; --left)
            std::swap(draws[left - 1], draws[random() % left]);
        return draws;
    }

    std::map<Days, Draws> m_until;
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
    Draws gone{}; // to the rolls before
    Millimetres spokenFor;
    bool isFirst = true;
    for (std::size_t at = 0; at < rolls.size(); ++at) {
        const RollInTurn& roll = rolls[at];
        spokenFor += roll.allotted;
        if (!roll.mayBeUsed)
            continue;
        const Draws& until = use.until(roll.days);
        Draws taken{};
        for (std::size_t draw = 0; draw < taken.size(); ++draw) {
            taken[draw] = std::clamp(until[draw] - static_cast<double>(spokenFor.value) - gone[draw], 0.0,
                                     static_cast<double>(std::max<std::int64_t>(0, roll.free.value)));
            gone[draw] += taken[draw];
        }
        uses[at] = isFirst ? expectedUse(rate, roll.days, spokenFor, roll.free) : summedUp(taken);
        isFirst = false;
    }
    return uses;
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// States of a day that a search through its orders has met. Different orders of the same garments often reach
// the same state. Only the one that reached it first needs exploring.

#include "core/press/day_plan_simulation.h"

#include <cstdint>
#include <unordered_map>
#include <vector>

namespace holdfast {

class DayMemory {
public:
    // Whether an equivalent state was reached before, no later and with no worse score: then no order that
    // continues from here can end better. If not, this one is remembered. Equivalent states continue alike,
    // whatever they are given next. `given`: which garments the state was given; equal for equal sets of
    // them.
    bool hasMetAsGood(const DayState& state, std::uint64_t given);

private:
    // All that the rest of a day depends on, but for how late it is and what was reached.
    using Outlook = std::vector<std::int64_t>;

    struct OutlookHash {
        std::size_t operator()(const Outlook& outlook) const;
    };

    struct Reached {
        std::int64_t now = 0;
        DayScore score;

        bool isNoWorseThan(const Reached& other) const;
    };

    void setOutlook(const DayState& state, std::uint64_t given);

    std::unordered_map<Outlook, std::vector<Reached>, OutlookHash> m_met;
    Outlook m_outlook;
    std::vector<const DayState::Garment*> m_inOrder;
};

} // namespace holdfast

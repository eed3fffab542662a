// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_memory.h"

#include <algorithm>

namespace holdfast {

bool DayMemory::hasMetAsGood(const DayState& state, std::uint64_t given) {
    setOutlook(state, given);
    const Reached reached{state.now, state.score};
    std::vector<Reached>& met = m_met[m_outlook];
    if (std::ranges::any_of(met, [&](const Reached& other) { return other.isNoWorseThan(reached); }))
        return true;
    std::erase_if(met, [&](const Reached& other) { return reached.isNoWorseThan(other); });
    met.push_back(reached);
    return false;
}

bool DayMemory::Reached::isNoWorseThan(const Reached& other) const {
    return now <= other.now && score.lateness <= other.score.lateness && score.ends <= other.score.ends &&
           score.changes <= other.score.changes;
}

// Moments count from now on: what is past has been, how long ago makes no difference.
void DayMemory::setOutlook(const DayState& state, std::uint64_t given) {
    m_outlook.assign(1, static_cast<std::int64_t>(given));
    const auto add = [&](std::int64_t value) { m_outlook.push_back(value); };
    const auto addMoment = [&](std::int64_t moment) { add(std::max<std::int64_t>(0, moment - state.now)); };
    m_inOrder.clear();
    addMoment(state.handsFreeAt);
    for (const DayState::Platen& platen : state.platens) {
        add(static_cast<std::int64_t>(platen.heat));
        add(platen.isCold);
        addMoment(platen.steadyAt);
        addMoment(platen.freeAt);
        addMoment(platen.opensAt);
        // Sharing out compares the platens with each other.
        add(platen.sharedUntil - state.platens.front().sharedUntil);
        add(static_cast<std::int64_t>(platen.sharedHeat));
        for (const auto* garments : {&platen.begun, &platen.queue}) {
            add(static_cast<std::int64_t>(garments->size()));
            for (const DayState::Garment& garment : *garments) {
                add(static_cast<std::int64_t>(garment.job));
                add(static_cast<std::int64_t>(garment.next));
                add(garment.hasBeenOnPlaten);
                add(platen.holder == garment.place);
                addMoment(garment.readyAt);
                m_inOrder.push_back(&garment);
            }
        }
    }
    // Who goes first where garments of several platens ask for the hands.
    if (state.platens.size() > 1) {
        std::ranges::sort(m_inOrder, {}, &DayState::Garment::place);
        for (const DayState::Garment* garment : m_inOrder)
            add(static_cast<std::int64_t>(garment->job));
    }
}

std::size_t DayMemory::OutlookHash::operator()(const Outlook& outlook) const {
    std::uint64_t hash = 0;
    for (const std::int64_t value : outlook) {
        hash = (hash ^ static_cast<std::uint64_t>(value)) * 0x9e3779b97f4a7c15; // 2^64 over the golden ratio
        hash ^= hash >> 32;
    }
    return static_cast<std::size_t>(hash);
}

} // namespace holdfast

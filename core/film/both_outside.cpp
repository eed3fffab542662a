// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/both_outside.h"

#include <algorithm>

namespace holdfast {

namespace {

double spannedHours(Instant begins, Instant ends) {
    return std::chrono::duration<double, std::ratio<3600>>(ends - begins).count();
}

} // namespace

void BothOutside::add(const ExposureCurve& humidity, const ExposureCurve& temperature, Instant from,
                      Instant to) {
    const std::vector<Spell> damp = humidity.spellsBetween(from, to);
    const std::vector<Spell> warm = temperature.spellsBetween(from, to);
    auto one = damp.begin();
    auto other = warm.begin();
    while (one != damp.end() && other != warm.end()) {
        const Instant begins = std::max(one->begins, other->begins);
        const Instant ends = std::min(one->ends, other->ends);
        if (begins < ends) {
            const Stretch* last = m_stretches.empty() ? nullptr : &m_stretches.back();
            const double before = last ? last->hoursBefore + spannedHours(last->begins, last->ends) : 0;
            m_stretches.push_back({begins, ends, before});
        }
        if (one->ends < other->ends)
            ++one;
        else
            ++other;
    }
}

double BothOutside::hoursBetween(Instant from, Instant to) const {
    return to <= from ? 0.0 : std::max(0.0, upTo(to) - upTo(from));
}

double BothOutside::upTo(Instant instant) const {
    const auto next = std::ranges::upper_bound(m_stretches, instant, {}, &Stretch::begins);
    if (next == m_stretches.begin())
        return 0;
    const Stretch& stretch = *std::prev(next);
    return stretch.hoursBefore + spannedHours(stretch.begins, std::min(stretch.ends, instant));
}

} // namespace holdfast

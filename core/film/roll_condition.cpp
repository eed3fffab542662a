// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/roll_condition.h"

namespace holdfast {

std::optional<Days> RollCondition::daysLeft(LocalDate today) const {
    return useBy ? std::optional<Days>{*useBy - today} : std::nullopt;
}

bool RollCondition::isBadlyKept(const Film& film) const {
    return isOutsideNow() || hoursOutside() > static_cast<double>(film.storage.allowedOutside.count());
}

bool RollCondition::mayBeUsed(const Film& film, LocalDate today) const {
    return !isPastAge(today) && !isBadlyKept(film) && !stripFailed;
}

const RollCondition* RollConditions::find(RollId roll) const {
    const auto found = m_conditions.find(roll);
    return found == m_conditions.end() ? nullptr : &found->second;
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/fair.h"

#include <algorithm>

namespace holdfast {

const Fair* fairOf(std::span<const Fair> fairs, const std::string& place, LocalDate day) {
    const auto found =
        std::ranges::find_if(fairs, [&](const Fair& fair) { return fair.name == place && fair.isOn(day); });
    return found == fairs.end() ? nullptr : &*found;
}

const Fair* nextFair(std::span<const Fair> fairs, LocalDate today) {
    const Fair* next = nullptr;
    for (const Fair& fair : fairs)
        if (!fair.isOver(today) && (!next || fair.firstDay < next->firstDay))
            next = &fair;
    return next;
}

std::vector<std::string> fairsOfToday(std::span<const Fair> fairs, LocalDate today) {
    std::vector<std::string> names;
    for (const Fair& fair : fairs)
        if (fair.isOn(today))
            names.push_back(fair.name);
    std::ranges::sort(names);
    names.erase(std::unique(names.begin(), names.end()), names.end());
    return names;
}

} // namespace holdfast

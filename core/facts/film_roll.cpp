// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/film_roll.h"

#include "core/trade/paper_numbers.h"

#include <algorithm>

namespace holdfast {

std::string FilmRoll::label() const {
    return rollLabel(number);
}

std::optional<PlaceId> FilmRoll::placeNow() const {
    if (stays.empty() || !stays.back().place.isSet())
        return std::nullopt;
    return stays.back().place;
}

const TestStrip* FilmRoll::lastStrip() const {
    return testStrips.empty() ? nullptr : &testStrips.back();
}

const TestStrip* FilmRoll::lastPassedStrip() const {
    const auto found = std::find_if(testStrips.rbegin(), testStrips.rend(),
                                    [](const TestStrip& strip) { return strip.passed; });
    return found == testStrips.rend() ? nullptr : &*found;
}

} // namespace holdfast

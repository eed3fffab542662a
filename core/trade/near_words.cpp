// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/near_words.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr std::size_t kLeastLetters = 5;

// The rest of both after the letters that they begin with alike.
void dropAlike(std::string_view& one, std::string_view& two) {
    const auto [a, b] = std::ranges::mismatch(one, two);
    two.remove_prefix(static_cast<std::size_t>(b - two.begin()));
    one.remove_prefix(static_cast<std::size_t>(a - one.begin()));
}

bool differInOneLetter(std::string_view one, std::string_view two) {
    dropAlike(one, two);
    if (one.empty() || two.empty())
        return one.size() + two.size() <= 1;
    if (one.substr(1) == two.substr(1) || one.substr(1) == two || one == two.substr(1))
        return true;
    return one.size() > 1 && two.size() > 1 && one[0] == two[1] && one[1] == two[0] &&
           one.substr(2) == two.substr(2);
}

} // namespace

bool isNearlyBeginningOf(std::string_view typed, std::string_view word) {
    if (typed.size() < kLeastLetters)
        return false;
    for (std::size_t length = typed.size() - 1; length <= typed.size() + 1; ++length)
        if (length <= word.size() && differInOneLetter(typed, word.substr(0, length)))
            return true;
    return false;
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether what was typed is a word's beginning but for one letter: another one, one missing, one too many, or
// two that changed places ("lindkvist" for Lindqvist, "farant" for Farrant). Of fewer than five letters
// nearly everything would be near, so nothing is. Both are folded already; a letter outside ASCII counts by
// its bytes.

#include <string_view>

namespace holdfast {

bool isNearlyBeginningOf(std::string_view typed, std::string_view word);

} // namespace holdfast

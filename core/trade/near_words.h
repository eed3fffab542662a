// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether what was typed is a word, or a word's beginning, but for one letter: another one, one missing, one
// too many, or two neighbours that changed places ("lindkvist" for Lindqvist, "farant" for Farrant). That is
// a distance of at most one in optimal string alignment. All is folded already; letters are counted, not
// bytes.

#include <string_view>

namespace holdfast {

// Of fewer than four letters nearly every word would be near, so none is.
bool isNearly(std::string_view typed, std::string_view word);
// Of fewer than five nearly every beginning would be.
bool isNearlyBeginningOf(std::string_view typed, std::string_view word);

} // namespace holdfast

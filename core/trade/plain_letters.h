// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Letters as somebody types them who does not have them on the keyboard.

#include <string>
#include <string_view>

namespace holdfast {

// "sørensen" → "sorensen", "łukasz" → "lukasz", "straße" → "strasse", "ışık" → "işik": what is a letter of
// its own, and no letter with a mark that folded() takes off. Of text that is folded already.
std::string withPlainLetters(std::string text);

} // namespace holdfast

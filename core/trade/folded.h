// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Text as a search compares it: small letters without their marks, so that "malmo" finds "Malmö".

#include <string>
#include <string_view>

namespace holdfast {

// Latin, Greek and Cyrillic letters made small, marks taken off Latin ones (U+00C0 to U+017F). All else stays
// as it is, also bytes that are no UTF-8. The same as the tokenizer "unicode61 remove_diacritics 2" of
// SQLite's FTS5 does with these letters.
std::string folded(std::string_view text);

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A sentence as text to be kept, so that it can be said in another language later. The text is JSON, made of
// nothing but arrays, strings and whole numbers:
//
//   ["Took order {order} at {place}",["order","number",426],["place","name","Creek Fair"]]
//
// that is the pattern and its values, each with its name and its kind. Words as they are stand as a string.

#include "core/trade/sentence.h"

#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

// Nothing where there is nothing to keep beside the English: of words as they are, and of a sentence with so
// many parts in one another that reading it again would be refused.
std::string keptForm(const Sentence& sentence);

// Nothing where the text is no kept form, or one that would take long to say.
std::optional<Sentence> sentenceKept(std::string_view text);

} // namespace holdfast

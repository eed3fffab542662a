// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Sentences as a test compares them: in English.

#include "core/trade/sentence.h"

#include <string>
#include <vector>

namespace holdfast::test {

inline std::vector<std::string> english(const std::vector<Sentence>& sentences) {
    std::vector<std::string> words;
    for (const Sentence& sentence : sentences)
        words.push_back(sentence.english());
    return words;
}

} // namespace holdfast::test

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A thing's name out of a table, to become a part of a sentence: phrase("seams"). As with said(), lupdate
// reads the literal.

#include <iosfwd>
#include <string_view>

namespace holdfast {

struct Phrase {
    std::string_view english;

    friend std::ostream& operator<<(std::ostream& out, Phrase phrase);

    bool empty() const { return english.empty(); }
    bool operator==(const Phrase&) const = default;
    friend bool operator==(Phrase phrase, std::string_view words) { return phrase.english == words; }
};
constexpr Phrase phrase(std::string_view english) {
    return {english};
}

} // namespace holdfast

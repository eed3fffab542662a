// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the program says, as data: a pattern in English with named places, and what is put into them. English
// comes out of it by itself; the window asks the installed translation for the pattern. Numbers are as in
// English.
//
//   said("{lot}: no wash load on record.", {{"lot", lot}})
//   said("Washed {n} blank|Washed {n} blanks", {{"n", count}})
//
// The pattern is also the key by which a translation is found. lupdate reads it as the argument of said(), so
// it is written there as a literal. Where the value named "n" is a count, the pattern has the form for one
// and, after a bar, the form for every other number. A value is a fact and never a piece of grammar. A
// sentence may be a value too; it gets a capital where it comes first.

#include "core/trade/sentence_value.h"

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

class Language;

struct NamedValue {
    std::string name;
    Value value;

    bool operator==(const NamedValue&) const = default;
};

class Sentence {
public:
    Sentence() = default; // says nothing
    Sentence(Phrase phrase);
    // REQUIRES: each place of the pattern has its value, and each value its place.
    Sentence(std::string pattern, std::vector<NamedValue> values);

    bool empty() const { return m_pattern.empty(); }
    const std::string& pattern() const { return m_pattern; }
    const std::vector<NamedValue>& values() const { return m_values; }
    bool isAsItIs() const { return m_isAsItIs; }

    // Whether the other is this one or a part of it.
    bool says(const Sentence& other) const;

    std::string in(const Language& language) const;
    std::string english() const;

    bool operator==(const Sentence&) const = default;
    template <class Text>
        requires std::convertible_to<const Text&, std::string_view>
    friend bool operator==(const Sentence& sentence, const Text& english) {
        return sentence.english() == std::string_view{english};
    }
    friend std::ostream& operator<<(std::ostream& out, const Sentence& sentence);
    friend Sentence asItIs(std::string words);

private:
    std::string m_pattern;
    std::vector<NamedValue> m_values;
    bool m_isAsItIs = false;
};

Sentence said(std::string_view pattern, std::vector<NamedValue> values = {});

// Words in no need of translation: what a person typed, what the system says, or what an older version wrote.
Sentence asItIs(std::string words);

// A part that has a capital alone and none in the middle of a line: "then peel warm".
Value withinLine(Sentence part);

// A part that is as it is alone, wherever it stands: a title in quotes.
Value asAlone(Sentence part);

// A part alone, with the capital that it has as a line of its own: "Seams".
Sentence withCapital(Sentence part);

// Two sentences with a space between them: "It is late. Press it first."
Sentence oneAfterTheOther(Sentence first, Sentence then);

// "size, colour and price". REQUIRES: at least one.
Sentence listed(std::vector<Sentence> parts);

} // namespace holdfast

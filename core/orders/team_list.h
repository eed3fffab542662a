// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The list of a team: a garment a line, with the name and the number that go on it and its size, as it is
// typed, pasted from a spreadsheet (tabs) or read from a file (commas, semicolons).
//
//     Juno, 7, M
//     Wren Ash; L
//     9  XL
//
// Fields may stand in any order: a size of the style is the size, whole digits are the number, all else the
// name. A first line of headings (name, number, size) says which column is which, where digits could be
// either. Without separators the words of a line are read the same way. XXL and 2XL are the same size (common
// practice, no source).

#include "core/trade/result.h"
#include "core/trade/sentence.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

struct TeamLine {
    std::size_t line = 0; // of the text, from 1
    std::string name;     // either may be empty
    std::string number;
    std::string size; // as the style writes it; empty: none is named
    Sentence wrong;   // why it cannot be made; empty: it can

    bool operator==(const TeamLine&) const = default;
};

inline constexpr std::size_t kMostTeamLines = 200; // as many as an order may have garments

// The size of the style that is meant: "xxl" and "2 XL" are "2XL". None: it has no such size.
std::optional<std::string> sizeAmong(std::span<const std::string> sizes, std::string_view written);

// An error where the text cannot be split into fields, or has more lines than that. Lines without anything in
// them are passed over.
Result<std::vector<TeamLine>> readTeamList(std::string_view text, std::span<const std::string> sizes);

} // namespace holdfast

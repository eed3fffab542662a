// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the square code on a paper holds: the number that is printed there, a point, and four check letters
// made of that number and of the id of what it names ("418-b.KHTR"). A code that was read by half or misread,
// or that another shop printed, does not fit its check letters: one in 104,976 would by chance.
//
// The letters are those that lie on the same keys of the usual Latin keyboards, and signs are read as
// whatever separates, because a scanner types like a keyboard and knows nothing of the layout.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

// REQUIRES: the number as printed, "418", "418-b" or "R-09".
std::string paperCode(std::string_view number, std::int64_t id);

struct ScannedCode {
    enum class Kind { Order, Garment, Roll };

    Kind kind = Kind::Order;
    std::int64_t number = 0; // of the order or of the roll
    std::string letter;      // of the garment, "b"
    std::string check;       // four letters; empty where a number was printed or typed alone

    std::string label() const; // the number as printed, "418-b"
    bool fits(std::int64_t id) const;

    bool operator==(const ScannedCode&) const = default;
};

// None where it has the shape of none of our codes, as half of one has not.
std::optional<ScannedCode> readPaperCode(std::string_view typed);

} // namespace holdfast

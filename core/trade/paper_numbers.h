// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How rolls and garments are numbered, on papers, on screens and in files.

#include <cstdint>
#include <string>

namespace holdfast {

std::string rollLabel(std::int64_t number); // "R-09"

// "a" … "z", "aa" …; empty below 1.
std::string garmentLetter(std::int64_t position);
std::string garmentLabel(std::int64_t orderNumber, std::int64_t position); // "418-b"

} // namespace holdfast

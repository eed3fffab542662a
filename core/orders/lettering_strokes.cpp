// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/lettering_strokes.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace holdfast {

namespace {

constexpr std::string_view kReachBelow = "gjpqyQJ,;"; // of ASCII
constexpr std::array<std::string_view, 2> kReachBelowToo{"ç", "ş"};
constexpr std::string_view kOnTheLine = "acegmnopqrsuvwxyz ,.-";

bool reachesBelow(std::string_view text) {
    return text.find_first_of(kReachBelow) != text.npos ||
           std::ranges::any_of(kReachBelowToo,
                               [&](std::string_view letter) { return text.find(letter) != text.npos; });
}

} // namespace

double strokeEstimate(const Wording& wording, Millimetres height) {
    const std::string_view text = wording.text;
    const bool isLow = text.find_first_not_of(kOnTheLine) == text.npos;
    // Shares of the capitals' height: small letters 0.68, what hangs below the line 0.3.
    const double inkHeight = (isLow ? 0.68 : 1.0) + (reachesBelow(text) ? 0.3 : 0.0);
    const double letterHeight = static_cast<double>(height.value) / inkHeight;
    return letterHeight * (wording.face == Face::BookSerif ? 0.12 : 0.15);
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/paper_numbers.h"

namespace holdfast {

std::string rollLabel(std::int64_t number) {
    const std::string digits = std::to_string(number);
    return digits.size() < 2 ? "R-0" + digits : "R-" + digits;
}

std::string garmentLetter(std::int64_t position) {
    std::string letters;
    // Counting without a zero: after z comes aa.
    for (std::int64_t left = position; left > 0; left = (left - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('a' + (left - 1) % 26));
    return letters;
}

std::string garmentLabel(std::int64_t orderNumber, std::int64_t position) {
    return std::to_string(orderNumber) + "-" + garmentLetter(position);
}

} // namespace holdfast

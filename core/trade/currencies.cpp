// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/currencies.h"

#include <algorithm>
#include <array>

namespace holdfast {

namespace {

constexpr std::array<std::string_view, 16> kNoDecimals{"BIF", "CLP", "DJF", "GNF", "ISK", "JPY",
                                                       "KMF", "KRW", "PYG", "RWF", "UGX", "VND",
                                                       "VUV", "XAF", "XOF", "XPF"};
constexpr std::array<std::string_view, 7> kThreeDecimals{"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};

} // namespace

int currencyExponent(std::string_view code) {
    constexpr int kMost = 3;
    constexpr int kUsual = 2;
    if (std::ranges::find(kNoDecimals, code) != kNoDecimals.end())
        return 0;
    return std::ranges::find(kThreeDecimals, code) != kThreeDecimals.end() ? kMost : kUsual;
}

} // namespace holdfast

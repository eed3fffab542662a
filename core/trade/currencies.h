// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What ISO 4217 says of a currency by its code.

#include <string_view>

namespace holdfast {

// Digits after the point: 2 for all that are not listed otherwise.
// Source: ISO 4217, list one (minor units), from memory.
int currencyExponent(std::string_view code);

} // namespace holdfast

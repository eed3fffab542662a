// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Phone numbers as people write them, compared: "+44 (0)7700 900421", "0044 7700 900421" and "07700-900421"
// are one number.

#include <string>
#include <string_view>

namespace holdfast {

struct PhoneNumber {
    std::string digits;   // all of them, as written
    std::string country;  // "44"; nothing where it is written as it is dialled at home
    std::string national; // without the country and without a 0 before it

    bool hasCountry() const { return !country.empty(); }
};

PhoneNumber readPhone(std::string_view written);

// Whether what was typed is this number or a part of it: from three digits on its end, from five on anything
// in it, and its beginning also where only one of the two has the country.
bool isPartOfPhone(const PhoneNumber& typed, const PhoneNumber& kept);

} // namespace holdfast

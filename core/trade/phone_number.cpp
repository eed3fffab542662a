// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/phone_number.h"

#include <algorithm>
#include <iterator>

namespace holdfast {

namespace {

constexpr std::size_t kEndFrom = 3;
constexpr std::size_t kInsideFrom = 5;
constexpr std::size_t kBeginningFrom = 3; // of the national number
constexpr std::size_t kLongestCountry = 3;
constexpr std::size_t kWholeFrom = 10; // digits that may begin with a country although no sign says so

bool isPhoneDigit(char each) {
    return each >= '0' && each <= '9';
}

// How many digits the country takes. ITU-T E.164 gives 1 and 7 to their zones alone, two digits to the
// countries listed, and three to all others (the list is from memory).
std::size_t countryDigits(std::string_view digits) {
    if (digits.empty() || digits[0] == '0')
        return 0;
    if (digits[0] == '1' || digits[0] == '7')
        return 1;
    constexpr std::string_view kOfTwo =
        "20 27 30 31 32 33 34 36 39 40 41 43 44 45 46 47 48 49 51 52 53 54 55 56 57 "
        "58 60 61 62 63 64 65 66 81 82 84 86 90 91 92 93 94 95 98";
    return kOfTwo.find(digits.substr(0, 2)) != std::string_view::npos ? 2 : 3;
}

std::string withoutZeros(std::string_view digits) {
    return std::string(digits.substr(std::min(digits.find_first_not_of('0'), digits.size())));
}

void readWithCountry(PhoneNumber& phone, std::string_view digits, std::size_t length) {
    length = std::min(length, digits.size());
    phone.country = digits.substr(0, length);
    phone.national = withoutZeros(digits.substr(length));
}

bool isSameNumber(const PhoneNumber& one, const PhoneNumber& other) {
    return one.national == other.national && (!other.hasCountry() || one.country == other.country);
}

} // namespace

PhoneNumber readPhone(std::string_view written) {
    PhoneNumber phone;
    std::ranges::copy_if(written, std::back_inserter(phone.digits), isPhoneDigit);
    const std::string_view digits = phone.digits;
    const auto first = std::ranges::find_if(written, isPhoneDigit);
    const auto end = std::find_if_not(first, written.end(), isPhoneDigit);
    const auto group = static_cast<std::size_t>(end - first);
    if (std::find(written.begin(), first, '+') != first)
        // What is written apart is the country.
        readWithCountry(phone, digits,
                        end != written.end() && group <= kLongestCountry ? group : countryDigits(digits));
    else if (digits.starts_with("00"))
        readWithCountry(phone, digits.substr(2), countryDigits(digits.substr(2)));
    else
        phone.national = withoutZeros(digits);
    return phone;
}

bool isPartOfPhone(const PhoneNumber& typed, const PhoneNumber& kept) {
    if ((typed.digits.size() >= kEndFrom && kept.digits.ends_with(typed.digits)) ||
        (typed.digits.size() >= kInsideFrom && kept.digits.find(typed.digits) != std::string::npos))
        return true;
    if (typed.digits.size() >= kWholeFrom && !typed.hasCountry() && !typed.digits.starts_with('0')) {
        PhoneNumber withCountry{typed.digits, {}, {}};
        readWithCountry(withCountry, typed.digits, countryDigits(typed.digits));
        return isSameNumber(withCountry, kept);
    }
    const bool isAtHome = typed.digits.starts_with('0') && !typed.hasCountry();
    if (typed.national.size() < kBeginningFrom || (!typed.hasCountry() && !isAtHome))
        return false;
    if (isAtHome)
        return (kept.hasCountry() && kept.national.starts_with(typed.national)) ||
               (typed.digits.size() >= kWholeFrom && kept.digits.ends_with(typed.national));
    if (!kept.hasCountry() && kept.digits.starts_with(typed.country + typed.national))
        return true;
    return kept.national.starts_with(typed.national) && (!kept.hasCountry() || kept.country == typed.country);
}

} // namespace holdfast

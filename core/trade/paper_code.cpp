// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/paper_code.h"

#include "core/trade/paper_numbers.h"

#include <algorithm>
#include <charconv>
#include <vector>

namespace holdfast {

namespace {

constexpr std::string_view kCheckLetters = "BCDEFGHJKLNPRSTUVX";
constexpr int kCheckLength = 4;
constexpr std::size_t kMostDigits = 9;
constexpr std::size_t kMostGarmentLetters = 2;

// FNV-1a, 64 bits, with the high bits folded down: neighbouring numbers get letters that differ.
std::uint64_t sumOf(std::string_view number, std::int64_t id) {
    std::uint64_t sum = 14695981039346656037U;
    const auto add = [&sum](std::uint8_t byte) { sum = (sum ^ byte) * 1099511628211U; };
    for (const char each : number)
        add(static_cast<std::uint8_t>(each));
    for (int byte = 0; byte < 8; ++byte)
        add(static_cast<std::uint8_t>(static_cast<std::uint64_t>(id) >> (8 * byte)));
    return sum ^ (sum >> 29);
}

std::string checkOf(std::string_view number, std::int64_t id) {
    std::uint64_t left = sumOf(number, id);
    std::string check;
    for (int at = 0; at < kCheckLength; ++at) {
        check += kCheckLetters[left % kCheckLetters.size()];
        left /= kCheckLetters.size();
    }
    return check;
}

bool isCodeDigit(char each) {
    return each >= '0' && each <= '9';
}

bool isCodeLetter(char each) {
    return (each >= 'a' && each <= 'z') || (each >= 'A' && each <= 'Z');
}

char small(char each) {
    return each >= 'A' && each <= 'Z' ? static_cast<char>(each - 'A' + 'a') : each;
}

char capital(char each) {
    return each >= 'a' && each <= 'z' ? static_cast<char>(each - 'a' + 'A') : each;
}

// Runs of digits or letters; whatever is between two is a separator, but two in a row are a gap in the
// code.
std::optional<std::vector<std::string>> partsOf(std::string_view typed) {
    std::vector<std::string> parts(1);
    for (const char each : typed) {
        // A sign outside ASCII takes several bytes and separates once.
        const bool goesOnWithSign = (static_cast<unsigned char>(each) & 0xC0) == 0x80;
        if (isCodeDigit(each) || isCodeLetter(each))
            parts.back() += each;
        else if (!goesOnWithSign)
            parts.emplace_back();
    }
    const bool hasGap = std::ranges::any_of(parts, &std::string::empty);
    return hasGap ? std::nullopt : std::optional(parts);
}

std::optional<std::int64_t> numberOf(std::string_view digits) {
    std::int64_t number = 0;
    if (digits.size() > kMostDigits || !std::ranges::all_of(digits, isCodeDigit))
        return std::nullopt;
    std::from_chars(digits.data(), digits.data() + digits.size(), number);
    return number;
}

bool isCheck(std::string_view part) {
    return part.size() == kCheckLength && std::ranges::all_of(part, [](char each) {
               return kCheckLetters.find(capital(each)) != std::string_view::npos;
           });
}

bool isGarmentLetter(std::string_view part) {
    return part.size() <= kMostGarmentLetters && std::ranges::all_of(part, isCodeLetter);
}

std::string inCase(std::string_view part, char (*each)(char)) {
    std::string made(part);
    std::ranges::transform(made, made.begin(), each);
    return made;
}

} // namespace

std::string paperCode(std::string_view number, std::int64_t id) {
    return std::string(number) + "." + checkOf(number, id);
}

std::string ScannedCode::label() const {
    if (kind == Kind::Roll)
        return rollLabel(number);
    const std::string digits = std::to_string(number);
    return kind == Kind::Garment ? digits + "-" + letter : digits;
}

bool ScannedCode::fits(std::int64_t id) const {
    return check == checkOf(label(), id);
}

std::optional<ScannedCode> readPaperCode(std::string_view typed) {
    auto parts = partsOf(typed);
    if (!parts)
        return std::nullopt;
    ScannedCode code;
    if (parts->size() > 1 && isCheck(parts->back())) {
        code.check = inCase(parts->back(), capital);
        parts->pop_back();
    }
    const bool isRoll = parts->size() == 2 && inCase(parts->front(), capital) == "R";
    const auto number = numberOf(isRoll ? parts->back() : parts->front());
    if (!number || parts->size() > 2)
        return std::nullopt;
    code.number = *number;
    if (isRoll) {
        code.kind = ScannedCode::Kind::Roll;
    } else if (parts->size() == 2) {
        if (!isGarmentLetter(parts->back()))
            return std::nullopt;
        code.kind = ScannedCode::Kind::Garment;
        code.letter = inCase(parts->back(), small);
    }
    return code;
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/garments/garment_scale.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdlib>
#include <optional>
#include <string>

namespace holdfast {

namespace {

struct Measured {
    std::string_view outline;
    GarmentMeasures measures;
};

constexpr GarmentMeasures measured(SheetBox body, double units, double middle, double sizeStep,
                                   double atBirth, double perYear) {
    return {body, {(body.left + body.right) / 2, body.top}, units, middle, sizeStep, atBirth, perYear};
}

// tee and its kin: flat width under the arms; tote, bib and apron: widest; cap: across the front.
constexpr std::array kMeasures{Measured{"tee", measured({62, 55, 178, 227}, 128, 520, 40, 240, 15)},
                               Measured{"long-sleeve", measured({62, 55, 178, 227}, 128, 520, 40, 240, 15)},
                               Measured{"hoodie", measured({60, 72, 180, 168}, 126, 560, 40, 270, 16)},
                               Measured{"tote", measured({48, 112, 192, 236}, 158, 380, 0, 300, 8)},
                               Measured{"bib", measured({58, 106, 182, 226}, 152, 230, 20, 200, 20)},
                               Measured{"bodysuit", measured({68, 67, 172, 171}, 118, 240, 20, 190, 30)},
                               Measured{"cap", measured({76, 66, 164, 144}, 144, 180, 6, 140, 4)},
                               Measured{"apron", measured({52, 48, 188, 160}, 160, 600, 40, 340, 18)}};

constexpr double kGrownUp = 16; // years

std::string plainSize(std::string_view size) {
    std::string plain;
    for (const char letter : size)
        plain += static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
    const auto isSpace = [](char letter) { return std::isspace(static_cast<unsigned char>(letter)) != 0; };
    while (!plain.empty() && isSpace(plain.back()))
        plain.pop_back();
    plain.erase(plain.begin(), std::ranges::find_if_not(plain, isSpace));
    return plain;
}

// Steps away from M, of a letter size: S, XS, XXS or 2XS; L, XL, XXL or 2XL.
std::optional<int> letterSteps(std::string_view size) {
    if (size == "M")
        return 0;
    if (size.empty() || (size.back() != 'S' && size.back() != 'L'))
        return std::nullopt;
    const int sign = size.back() == 'S' ? -1 : 1;
    size.remove_suffix(1);
    if (size.size() == 2 && std::isdigit(static_cast<unsigned char>(size[0])) && size[1] == 'X')
        return sign * (1 + (size[0] - '0'));
    if (std::ranges::all_of(size, [](char letter) { return letter == 'X'; }))
        return sign * (1 + static_cast<int>(size.size()));
    return std::nullopt;
}

// Years of a child's size: the last number in it, months as parts of a year.
std::optional<double> years(std::string_view size) {
    const auto isDigit = [](char letter) { return std::isdigit(static_cast<unsigned char>(letter)) != 0; };
    std::size_t word = size.size();
    while (word > 0 && std::isalpha(static_cast<unsigned char>(size[word - 1])))
        --word;
    std::size_t end = word;
    while (end > 0 && size[end - 1] == ' ')
        --end;
    std::size_t begin = end;
    while (begin > 0 && isDigit(size[begin - 1]))
        --begin;
    if (begin == end)
        return std::nullopt;
    const double count = std::strtod(std::string(size.substr(begin, end - begin)).c_str(), nullptr);
    const std::string_view unit = size.substr(word);
    for (const std::string_view months : {"M", "MO", "MONTH", "MONTHS"})
        if (unit == months)
            return count / 12;
    for (const std::string_view year : {"Y", "YR", "YRS", "YEAR", "YEARS"})
        if (unit == year)
            return count;
    return std::nullopt;
}

} // namespace

const GarmentMeasures& garmentMeasures(std::string_view outline) {
    const auto* found = std::ranges::find(kMeasures, outline, &Measured::outline);
    return found == kMeasures.end() ? kMeasures.front().measures : found->measures;
}

double millimetresPerUnit(std::string_view outline, std::string_view size) {
    const GarmentMeasures& of = garmentMeasures(outline);
    const std::string plain = plainSize(size);
    double width = of.middle;
    if (const auto age = years(plain))
        width = of.atBirth + of.perYear * std::min(*age, kGrownUp);
    else if (const auto steps = letterSteps(plain))
        width += of.sizeStep * *steps;
    return width / of.units;
}

} // namespace holdfast

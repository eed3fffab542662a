// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Numbers with their units as findings and steps say them: "150 °C", "70 mm", "6 days". The app's own fields
// are written and read in app/shell/formats.

#include "core/trade/units.h"

#include <string>
#include <string_view>

namespace holdfast {

std::string numberWords(double number);                       // "4.3"; whole numbers without the decimal: "4"
std::string temperatureWords(Celsius temperature);            // "150 °C"
std::string lengthWords(Millimetres length);                  // "70 mm"
std::string sizeWords(Millimetres width, Millimetres height); // "280 × 300 mm"
std::string secondsWords(Seconds seconds);                    // "12 s"
std::string bandWords(double low, double high, std::string_view unit); // "30–50 %"

// "1 day", "6 days". `one` is the word for one of it; the plural takes an s.
std::string countWords(std::int64_t count, std::string_view one);

// Of ASCII only, and the same in every locale: std::tolower finds no small "I" in Turkish.
std::string withCapital(std::string text);    // "seams" → "Seams"
std::string inSmallLetters(std::string text); // "Yes" → "yes"

} // namespace holdfast

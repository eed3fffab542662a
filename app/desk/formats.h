// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How numbers, dates and words are written for a person, and read from what a person typed. One place.

#include "core/facts/order.h"
#include "core/facts/settings.h"
#include "core/trade/dates.h"
#include "core/trade/money.h"
#include "core/trade/result.h"
#include "core/trade/sentence.h"
#include "core/trade/units.h"

#include <QColor>
#include <QString>

#include <algorithm>
#include <concepts>
#include <cstdint>
#include <limits>
#include <optional>

namespace holdfast::app {

QString words(std::string_view text); // UTF-8 from core
QString words(const char* text);
QString words(const std::string& text);
QString words(const Sentence& sentence); // in the language of the window
QString valueWords(const Value& value);  // a number, a day, an amount: as a sentence of the window has it
std::string plain(const QString& text);  // trimmed UTF-8 for core
Sentence inWindow(const QString& words); // what the window says in its own language

// For tr("%n garment|%n garments", nullptr, howMany(count)): Qt counts in int.
template <std::integral Whole>
int howMany(Whole count) {
    constexpr std::int64_t kMost = std::numeric_limits<int>::max();
    return static_cast<int>(std::min(static_cast<std::int64_t>(count), kMost));
}

QString money(Money amount, const Currency& currency);     // "£26.50"
QString moneyBare(Money amount, const Currency& currency); // "26.50", for columns
QString metres(Millimetres length);                        // "3.4 m"
QString millimetres(Millimetres length);                   // "280 mm"
QString celsius(Celsius temperature);                      // "150 °C"
QString humidity(Humidity humidity);                       // "44 %"
QString percentOf(double share);                           // "7 %"; below one in a hundred "0.4 %"
QString kilograms(Grams weight);                           // "2.2 kg"
QString humidityBand(const Band<Humidity>& band);          // "30–50 %"
QString temperatureBand(const Band<Celsius>& band);        // "10–25 °C"
QString countdown(Seconds left);                           // "7", "1:18"
QString timeSpan(Seconds span);                            // "4 min", "12 s", "2 h 5 min"
QString dayCount(Days days);                               // "1 day", "21 days"
QString age(Days days);                                    // "11 months 4 days"

QString day(LocalDate date);                                  // "Thu 12 Nov"
QString dayNear(LocalDate date, LocalDate today);             // "today", "tomorrow", "Thu", "Thu 12 Nov"
QString date(LocalDate date);                                 // "12 Nov 2026"
QString month(std::chrono::year_month month);                 // "Nov 2026"
QString longDay(LocalDate date);                              // "Wednesday 11 November"
QString clock(LocalTime time);                                // "15:00"
QString hoursOfDay(LocalDate day, const OpeningHours& hours); // "3 Dec 2026 09:00–18:00"
QString promise(LocalTime ready, LocalDate today);            // "Thu 12 Nov after 15:00"

QColor colourOf(std::uint32_t rgb);

// What was typed, or an error that names the field and what is allowed.
Result<std::int64_t> readWhole(const QString& text, const QString& field, std::int64_t low,
                               std::int64_t high);
Result<double> readNumber(const QString& text, const QString& field, double low, double high);
Result<Money> readMoney(const QString& text, const QString& field, const Currency& currency);
Result<LocalDate> readDate(const QString& text, const QString& field,
                           LocalDate today); // ISO, "12.11.", "12/11/2026", "today"
// The same, or a day of the week: the next one after today.
Result<LocalDate> readComingDay(const QString& text, const QString& field, LocalDate today);
Result<std::optional<LocalDate>> readOptionalDate(const QString& text, const QString& field, LocalDate today);
Result<Millimetres> readMetres(const QString& text, const QString& field, Millimetres low, Millimetres high);

} // namespace holdfast::app

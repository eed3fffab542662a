// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the shelf says of a roll: how many days it has left and why, what is wrong with it, and what
// to do about it. Warmth costs days; damp and dryness are said as hours outside the band, for they cost none.

#include "app/theme/tokens.h"
#include "core/shop/reckoned_shop.h"

#include <QString>

#include <optional>

namespace holdfast::app {

// What a roll could be without the warmth it was in: the shelf life from its age's first day, or the
// printed date where that is earlier. None where neither is given.
std::optional<LocalDate> limitWithoutWarmth(const Film& film, const FilmRoll& roll);

// Days between that limit and its use-by. None are lost where a test strip set the use-by.
Days daysLostToWarmth(const ReckonedShop& shop, const FilmRoll& roll);

// "2 Dec"; with its year where that is not plain.
QString dayInShort(LocalDate date, LocalDate today);
QString spanInShort(const DaySpan& span, LocalDate today); // "2–20 Jan"
QString hourCount(double hours);                           // "96 h"
QString humidityBandWords(const Film& film);               // "30–50 %"
QString temperatureBandWords(const Film& film);            // "10–30 °C"
QString exposureWords(const RollCondition& condition,
                      const Film& film); // "96 h outside 30–50 %"; empty: none

// Next to a roll's tail.
struct TailWords {
    QString iconName; // empty for none
    QString lead;     // "21 days", "Past by 6 days"
    Role leadInk = &Tokens::ink;
    QString rest;  // "by 2 Dec", "press a test strip first"
    QString range; // "estimate 28 Nov – 9 Dec"; empty where the day is a fact
    QString lost;  // "12 days lost to warmth"; empty where none are

    QString inOneLine() const;
};
TailWords tailWords(const ReckonedShop& shop, const FilmRoll& roll);

enum class RollAct { TestStrip, Move, RecordReading, Recipe, CutWork };

// The one thing to do about the roll, most pressing first. No lead: there is nothing to do.
struct Advice {
    Tone tone = Tone::Plain;
    QString lead;
    QString text;
    std::optional<RollAct> act;
};
Advice adviceFor(const ReckonedShop& shop, const FilmRoll& roll);

// Rolls to be used within this many days count as "to use this month".
inline constexpr Days kSoon{30};

} // namespace holdfast::app

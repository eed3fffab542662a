// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What stands in a sentence, as the locale of the window's language writes it: "26,50 £", "Mo 30 Nov".

#include "core/trade/sentence_value.h"

#include <QString>

namespace holdfast::app {

// REQUIRES: no Parts, which are sentences of their own.
QString asLocaleWrites(const Value& value);

QString monthAsLocaleWrites(LocalDate day);   // "Nov 2026"
QString longDayAsLocaleWrites(LocalDate day); // "Wednesday 11 November"

// A date as the locale writes it, read back.
std::optional<LocalDate> dateAsLocaleWrites(const QString& text);

} // namespace holdfast::app

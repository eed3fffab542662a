// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day that a customer asks for, and what is said to it.

#include "core/facts/settings.h"
#include "core/trade/dates.h"

namespace holdfast {

struct WantedDay {
    enum class Answer { Kept, TooSoon, Closed };
    LocalDate day{};
    Answer answer = Answer::Kept;
    LocalTime earliest{};
    LocalTime promised{}; // a later day than the earliest: from the hour at which the shop opens on it
};

WantedDay answerWanted(const ShopSettings& settings, LocalTime earliest, LocalDate day);

} // namespace holdfast

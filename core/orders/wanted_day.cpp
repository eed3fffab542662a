// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/wanted_day.h"

#include "core/orders/promise.h"

#include <algorithm>

namespace holdfast {

WantedDay answerWanted(const ShopSettings& settings, LocalTime earliest, LocalDate day) {
    using Answer = WantedDay::Answer;
    WantedDay wanted{day, Answer::TooSoon, earliest, earliest};
    if (dateOf(earliest) > day)
        return wanted;
    const auto from = handedOverFrom(settings, std::max(earliest, LocalTime{day}));
    wanted.promised = from.value_or(earliest);
    wanted.answer = from && dateOf(*from) == day ? Answer::Kept : Answer::Closed;
    return wanted;
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day on which the shop would have to work longer for an order to be ready when it is wanted.

#include "core/orders/promise.h"

#include <optional>
#include <span>

namespace holdfast {

inline constexpr Hours kLongestMore{3};         // nobody is asked to press half the night
inline constexpr Minutes kLatestPress{22 * 60}; // nor later in the evening
inline constexpr Days kLongerDaysTried{10};     // from today on

struct LongerDay {
    LocalDate day{};
    OpeningHours hours;
    Hours more{0};
    LocalTime readyAt{};
};

// The fewest hours more at the end of one open day from today on, and of these the first day, by which it is
// ready on `wanted` or before. None: three hours on any day do not do it, or no promise can be made at all.
std::optional<LongerDay> longerDayFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                                      const Promised& promised, const Now& now, LocalDate wanted);

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/care_checks.h"

#include "core/trade/limits.h"

namespace holdfast::db {
namespace {

constexpr std::int64_t kMostUnits = 1'000'000;
constexpr Hours kFarthestEast{14}; // no clock on earth is further ahead of UTC

} // namespace

Result<Done> checkCare(const CareLimits& care) {
    const auto wrong = firstError({
        within(care.washCelsius, {.field = "careWash",
                                  .what = phrase("The washing temperature"),
                                  .least = 0,
                                  .most = 95,
                                  .unit = " °C"}),
        within(care.ironCelsius, {.field = "careIron",
                                  .what = phrase("The ironing temperature"),
                                  .least = 0,
                                  .most = 230,
                                  .unit = " °C"}),
    });
    return wrong ? Result<Done>{*wrong} : Result<Done>{Done{}};
}

Result<Done> checkCost(Money cost, std::string_view field, const Currency& currency) {
    Money limit{kMostUnits};
    for (int place = 0; place < currency.exponent; ++place)
        limit = limit * 10;
    if (cost < Money{} || cost >= limit)
        return fieldError(std::string{field}, said("The cost must be 0 or more and below {amount}.",
                                                   {{"amount", Amount{limit, currency}}}));
    return Done{};
}

Result<std::string> supplierOf(const std::string& typed) {
    return typedText(typed, {.field = "supplier", .what = phrase("The supplier"), .least = 0, .most = 80});
}

Result<Done> checkDay(LocalDate day, std::string_view field, Phrase what, Instant now) {
    const Now ahead{now, kFarthestEast};
    if (day > ahead.today())
        return fieldError(std::string{field}, said("{what} must not lie in the future.", {{"what", what}}));
    if (day < localDate(2000, 1, 1))
        return fieldError(std::string{field},
                          said("{what} must not lie before the year 2000.", {{"what", what}}));
    return Done{};
}

} // namespace holdfast::db

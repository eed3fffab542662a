// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/climate_beside.h"

#include "db/journal/shop.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <utility>

namespace holdfast::app {

namespace {

// Of the whole; the rest goes into the sums.
constexpr double kLoading = 0.6;

} // namespace

std::optional<ClimateRead> readClimate(const std::filesystem::path& shop, const Now& now,
                                       const std::function<bool(double share)>& goesOn) {
    const auto file = db::Shop::openReadOnly(shop, [at = now.instant] { return at; });
    if (!file.ok())
        return std::nullopt;
    ClimateRead read;
    const auto done = (*file)->read([&](db::Connection& connection) {
        const auto all = std::max<std::int64_t>(1, db::countReadings(connection));
        read.climate = db::loadClimate(connection, [&](std::int64_t loaded) {
            return goesOn(kLoading * static_cast<double>(loaded) / static_cast<double>(all));
        });
        read.reckoner.reckon(db::loadOpenFacts(connection), read.climate, now,
                             [&](double share) { return goesOn(kLoading + (1 - kLoading) * share); });
        return Done{};
    });
    return done.ok() ? std::optional{std::move(read)} : std::nullopt;
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/cutting_time.h"

#include <algorithm>
#include <cstdint>
#include <set>

namespace holdfast {

namespace {

constexpr std::int64_t kAreaUnit = 10'000;            // mm²: 100 cm²
constexpr std::int64_t kForAreaUnit = 25;             // s
constexpr std::int64_t kLongestDecalSide = 1'000'000; // mm

std::int64_t clamped(std::int64_t seconds) {
    return std::clamp<std::int64_t>(seconds, 0, kLongestWork.count());
}

std::int64_t decalSide(Millimetres length) {
    return std::clamp<std::int64_t>(length.value, 0, kLongestDecalSide);
}

} // namespace

Seconds weedingTime(const DecalToCut& decal, const ShopSettings& settings) {
    const std::int64_t area = decalSide(decal.width) * decalSide(decal.height);
    const std::int64_t forArea = (area * kForAreaUnit + kAreaUnit - 1) / kAreaUnit;
    const std::int64_t plain = clamped(settings.weedingTakes.count()) + forArea;
    return Seconds{clamped(decal.isLettering ? (plain * 3 + 1) / 2 : plain)};
}

Seconds cuttingTime(std::span<const DecalToCut> decals, const ShopSettings& settings) {
    const std::int64_t each =
        clamped(Seconds{std::clamp(settings.cutTakes, Minutes{0}, Minutes{Days{366}})}.count());
    std::set<FilmId> films;
    std::int64_t seconds = 0;
    for (const DecalToCut& decal : decals) {
        if (films.insert(decal.film).second)
            seconds = clamped(seconds + each);
        seconds = clamped(seconds + weedingTime(decal, settings).count());
    }
    return Seconds{seconds};
}

} // namespace holdfast

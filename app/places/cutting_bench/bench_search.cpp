// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_search.h"

#include <algorithm>

namespace holdfast::app {

void BenchSearch::begin(std::shared_ptr<const ReckonedShop> shop, const FilmToCut& film, const NestWish& wish,
                        const StripSearch& how) {
    drop();
    emit progressed(0);
    m_beside.begin(
        [shop = std::move(shop), film, wish, how](auto& reporter) {
            const auto work = std::max<std::uint64_t>(1, how.work.value_or(0));
            std::uint64_t done = 0;
            StripSearch search = how;
            search.shouldStop = [&] { return reporter.shouldStop(); };
            search.worked = [&](std::uint64_t pieces) {
                done += pieces;
                reporter.report(std::min(1.0, static_cast<double>(done) / static_cast<double>(work)));
            };
            return nestFilm(*shop, film, wish, &search);
        },
        [this](const Result<FilmNests>& nests) {
            if (nests.ok())
                emit found(*nests);
            emit ended();
        },
        [this](double share) { emit progressed(share); });
}

void BenchSearch::drop() {
    if (!isSearching())
        return;
    m_beside.drop();
    emit ended();
}

} // namespace holdfast::app

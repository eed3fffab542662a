// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/signed_rank.h"

#include "core/trade/assertion.h"
#include "core/trade/unit_normal.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numeric>
#include <vector>

namespace holdfast {

namespace {

// Twice the ranks, which are whole also where they are shared.
std::vector<std::size_t> doubledRanks(std::span<const double> sizes) {
    std::vector<std::size_t> ranks(sizes.size());
    for (std::size_t first = 0; first < sizes.size();) {
        std::size_t after = first + 1;
        while (after < sizes.size() && sizes[after] <= sizes[first])
            ++after;
        std::fill(ranks.begin() + static_cast<std::ptrdiff_t>(first),
                  ranks.begin() + static_cast<std::ptrdiff_t>(after), first + 1 + after);
        first = after;
    }
    return ranks;
}

// The chance that those of one sign add up to so much or less, where each is of it or not by the toss of a
// coin.
double chanceUpTo(std::span<const std::size_t> ranks, std::size_t sum) {
    if (ranks.size() > kMostCountedOut) {
        double all = 0;
        double squares = 0;
        for (const std::size_t rank : ranks) {
            all += static_cast<double>(rank);
            squares += static_cast<double>(rank) * static_cast<double>(rank);
        }
        // One more is half a step of doubled ranks: the correction for continuity.
        return std::min(1.0,
                        unitNormalShare((static_cast<double>(sum) + 1 - all / 2) / std::sqrt(squares / 4)));
    }
    std::vector<double> chances(std::accumulate(ranks.begin(), ranks.end(), std::size_t{0}) + 1);
    chances[0] = 1;
    for (const std::size_t rank : ranks)
        for (std::size_t at = chances.size(); at-- > 0;)
            chances[at] = (chances[at] + (at >= rank ? chances[at - rank] : 0)) / 2;
    const std::size_t last = std::min(sum + 1, chances.size());
    return std::accumulate(chances.begin(), chances.begin() + static_cast<std::ptrdiff_t>(last), 0.0);
}

// How many of the least means of pairs lie outside at one end: the largest sum of ranks that is unlikely
// enough. The interval ends at the next, so that a sum of nothing leaves none out.
std::size_t leftOut(std::size_t count, double outside) {
    std::vector<std::size_t> ranks(count);
    for (std::size_t at = 0; at < count; ++at)
        ranks[at] = 2 * (at + 1);
    std::size_t most = 0;
    std::size_t tooMany = count * (count + 1) / 4 + 1;
    while (most < tooMany) { // the first sum that is too likely
        const std::size_t sum = most + (tooMany - most) / 2;
        if (chanceUpTo(ranks, 2 * sum) <= outside / 2)
            most = sum + 1;
        else
            tooMany = sum;
    }
    return std::max<std::size_t>(most, 1) - 1;
}

} // namespace

double chanceOfSignedRanks(std::span<const double> differences) {
    std::vector<double> all;
    std::ranges::copy_if(differences, std::back_inserter(all),
                         [](double each) { return each < 0 || each > 0; });
    if (all.empty())
        return 1;
    std::ranges::sort(all, {}, [](double each) { return std::abs(each); });
    std::vector<double> sizes(all.size());
    std::ranges::transform(all, sizes.begin(), [](double each) { return std::abs(each); });
    const std::vector<std::size_t> ranks = doubledRanks(sizes);
    std::size_t above = 0;
    std::size_t below = 0;
    for (std::size_t at = 0; at < all.size(); ++at)
        (all[at] > 0 ? above : below) += ranks[at];
    return std::min(1.0, 2 * chanceUpTo(ranks, std::min(above, below)));
}

Centre centreOf(std::span<const double> differences, double outside) {
    HOLDFAST_ASSERT(!differences.empty() && outside > 0 && outside < 1);
    std::vector<double> means;
    means.reserve(differences.size() * (differences.size() + 1) / 2);
    for (std::size_t one = 0; one < differences.size(); ++one)
        for (std::size_t other = 0; other <= one; ++other)
            means.push_back((differences[one] + differences[other]) / 2);
    std::ranges::sort(means);
    const std::size_t last = means.size() - 1;
    const std::size_t out = std::min(leftOut(differences.size(), outside), last / 2);
    return {(means[last / 2] + means[means.size() / 2]) / 2, means[out], means[last - out]};
}

} // namespace holdfast

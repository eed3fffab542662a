// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Strips for the bench: cut up whole at random, so that the shortest length is known, and read from a folder.

#include "core/cutting/strip_packing.h"

#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace holdfast::bench {

struct KnownStrip {
    std::string name;
    StripTask task;
    std::int64_t shortest = 0;
    std::int64_t shortestTurned = 0; // where pieces may turn
};

// Strips cut up as Hopper and Turton cut theirs (2001, EJOR 128), half of them by straight cuts only. 140 of
// the sizes, numbers of pieces and shapes of their seven classes, with other cuts; 28 in which pieces may be
// any shape, slivers too; and 20 of large whole numbers, in which few pieces are alike.
std::vector<KnownStrip> stripsLikeThePublished();
std::vector<KnownStrip> stripsOfSmallNumbers();
std::vector<KnownStrip> stripsOfLargeNumbers();

// Sets of decals as a shop has them to cut at once: 60 sets of 3 to 40 decals, each side of 20 to 300 mm, on
// rolls of 300 to 600 mm, all drawn evenly. What is known of their shortest lengths is only the least length
// (core/cutting/strip.h), which stands for it; waste cannot be avoided in most of them.
std::vector<KnownStrip> decalsOfAShop(unsigned seed);

// The shortest lengths that a long run found for such a set, by the name of a set; shop_sets.txt says how.
struct LongRun {
    std::int64_t fixed = 0;
    std::int64_t turned = 0;
};
std::map<std::string, LongRun> longRuns(const std::filesystem::path& file);

// Of every strip-*.txt in the folder: blocks of "NAME WIDTH COUNT SHORTEST" and then COUNT lines "ACROSS
// ALONG"; lines with # say nothing. A block that is not so is told on standard error and passed over.
std::vector<KnownStrip> stripsIn(const std::filesystem::path& folder);

StripTask turnable(StripTask task);

} // namespace holdfast::bench

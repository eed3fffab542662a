#pragma once
// Strips for the bench: cut up whole at random, so that the shortest length is known, and read from a folder.

#include "core/cutting/strip_packing.h"

#include <filesystem>
#include <string>
#include <vector>

namespace holdfast::bench {

struct KnownStrip {
    std::string name;
    StripTask task;
    std::int64_t shortest = 0;
};

// Strips cut up as Hopper and Turton cut theirs (2001, EJOR 128), half of them by straight cuts only. 140 of
// the sizes, numbers of pieces and shapes of their seven classes, with other cuts; 28 in which pieces may be
// any shape, slivers too; and 20 of large whole numbers, in which few pieces are alike.
std::vector<KnownStrip> stripsLikeThePublished();
std::vector<KnownStrip> stripsOfSmallNumbers();
std::vector<KnownStrip> stripsOfLargeNumbers();

// Pieces of 20 to 200 both ways, on a strip 1,000 wide.
StripTask manyPieces(std::size_t count, bool mayTurn);

// Of every strip-*.txt in the folder: blocks of "NAME WIDTH COUNT SHORTEST" and then COUNT lines "ACROSS
// ALONG"; lines with # say nothing. A block that is not so is told on standard error and passed over.
std::vector<KnownStrip> stripsIn(const std::filesystem::path& folder);

StripTask turnable(StripTask task);

} // namespace holdfast::bench

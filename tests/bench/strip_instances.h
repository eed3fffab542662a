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

// Twenty-eight strips of 12 to 200 pieces, 15 to 1,000 wide and long; half of them by straight cuts only.
// Made as Hopper and Turton made theirs (2001, EJOR 128), in other sizes.
std::vector<KnownStrip> stripsWithoutWaste();

// Pieces of 20 to 200 both ways, on a strip 1,000 wide.
StripTask manyPieces(std::size_t count, bool mayTurn);

// Of every strip-*.txt in the folder: blocks of "NAME WIDTH COUNT SHORTEST" and then COUNT lines "ACROSS
// ALONG"; lines with # say nothing. A block that is not so is told on standard error and passed over.
std::vector<KnownStrip> stripsIn(const std::filesystem::path& folder);

StripTask turnable(StripTask task);

} // namespace holdfast::bench

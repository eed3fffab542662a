// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/strip_instances.h"

#include "tests/core/strip_builders.h"

#include <array>
#include <fstream>
#include <iostream>
#include <span>
#include <sstream>

namespace holdfast::bench {

namespace {

struct StripSize {
    std::int64_t width = 0;
    std::int64_t length = 0;
    std::size_t pieces = 0;
};

constexpr std::array<StripSize, 7> kSmallNumbers{
    {{20, 20, 16}, {40, 15, 25}, {60, 30, 28}, {60, 60, 49}, {60, 90, 73}, {80, 120, 97}, {160, 240, 196}}};

// In all 21 instances of Hopper and Turton no piece is more than seven times as long as wide (read off them).
constexpr std::int64_t kPublishedSlimmest = 7;
constexpr std::int64_t kAnyShape = 1'000'000;

constexpr std::array<StripSize, 10> kLargeNumbers{{{200, 200, 17},
                                                   {200, 200, 25},
                                                   {200, 200, 29},
                                                   {200, 200, 49},
                                                   {200, 200, 73},
                                                   {200, 200, 97},
                                                   {200, 200, 199},
                                                   {500, 700, 60},
                                                   {380, 900, 120},
                                                   {1'000, 1'000, 200}}};

std::optional<KnownStrip> readStrip(const std::string& head, std::istream& lines) {
    KnownStrip strip;
    std::size_t count = 0;
    std::istringstream words{head};
    if (!(words >> strip.name >> strip.task.width >> count >> strip.shortest))
        return std::nullopt;
    for (std::string line; strip.task.pieces.size() < count && std::getline(lines, line);) {
        StripPiece piece;
        std::istringstream sizes{line};
        if (sizes >> piece.across >> piece.along)
            strip.task.pieces.push_back(piece);
        else if (!line.empty() && line.front() != '#' && line.find_first_not_of(" \t\r") != std::string::npos)
            return std::nullopt;
    }
    if (strip.task.pieces.size() != count || strip.shortest < 1 || !checkTask(strip.task).ok())
        return std::nullopt;
    strip.shortestTurned = strip.shortest;
    return strip;
}

std::vector<KnownStrip> cutUp(std::span<const StripSize> sizes, int ofEach, unsigned seed,
                              std::int64_t slimmest) {
    strips::StripMaker maker{seed};
    std::vector<KnownStrip> made;
    for (const StripSize& size : sizes) {
        for (int next = 0; next < ofEach; ++next) {
            const bool straightCutsOnly = next % 2 == 0;
            KnownStrip strip;
            strip.name = std::to_string(size.width) + "x" + std::to_string(size.length) + "/" +
                         std::to_string(size.pieces) + (straightCutsOnly ? "s" : "r") +
                         std::to_string(next / 2);
            strip.task = maker.withoutWaste(size.width, size.length, size.pieces, straightCutsOnly, slimmest);
            strip.shortest = strip.shortestTurned = size.length;
            made.push_back(std::move(strip));
        }
    }
    return made;
}

} // namespace

std::vector<KnownStrip> stripsLikeThePublished() {
    return cutUp(kSmallNumbers, 20, 2028, kPublishedSlimmest);
}

std::vector<KnownStrip> stripsOfSmallNumbers() {
    return cutUp(kSmallNumbers, 4, 2026, kAnyShape);
}

std::vector<KnownStrip> stripsOfLargeNumbers() {
    return cutUp(kLargeNumbers, 2, 2027, kAnyShape);
}

std::vector<KnownStrip> decalsOfAShop(unsigned seed) {
    constexpr int kSets = 60;
    strips::StripMaker maker{seed};
    std::vector<KnownStrip> sets;
    for (int set = 0; set < kSets; ++set) {
        KnownStrip strip;
        strip.name = std::to_string(seed) + "/" + std::to_string(set + 1);
        strip.task.width = maker.between(300, 600);
        const std::int64_t decals = maker.between(3, 40);
        for (std::int64_t decal = 0; decal < decals; ++decal) {
            const std::int64_t across = maker.between(20, 300);
            strip.task.pieces.push_back({across, maker.between(20, 300), false, std::nullopt});
        }
        strip.shortest = leastLength(strip.task);
        strip.shortestTurned = leastLength(turnable(strip.task));
        sets.push_back(std::move(strip));
    }
    return sets;
}

std::map<std::string, LongRun> longRuns(const std::filesystem::path& file) {
    std::map<std::string, LongRun> all;
    std::ifstream lines{file};
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words{line};
        std::string name;
        LongRun run;
        if (line.starts_with('#') || !(words >> name >> run.fixed >> run.turned))
            continue;
        all[name] = run;
    }
    return all;
}

std::vector<KnownStrip> stripsIn(const std::filesystem::path& folder) {
    std::vector<KnownStrip> all;
    for (const auto& file : std::filesystem::directory_iterator{folder}) {
        const std::string name = file.path().filename().string();
        if (!name.starts_with("strip-") || !name.ends_with(".txt"))
            continue;
        std::ifstream lines{file.path()};
        for (std::string line; std::getline(lines, line);) {
            if (line.find_first_not_of(" \t\r") == std::string::npos || line.front() == '#')
                continue;
            if (auto strip = readStrip(line, lines))
                all.push_back(std::move(*strip));
            else
                std::cerr << file.path() << ": not understood: " << line << '\n';
        }
    }
    return all;
}

StripTask turnable(StripTask task) {
    for (StripPiece& piece : task.pieces)
        piece.mayTurn = true;
    return task;
}

} // namespace holdfast::bench

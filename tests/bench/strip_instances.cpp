#include "tests/bench/strip_instances.h"

#include "tests/core/strip_builders.h"

#include <array>
#include <fstream>
#include <iostream>
#include <sstream>

namespace holdfast::bench {

namespace {

struct StripSize {
    std::int64_t width = 0;
    std::int64_t length = 0;
    std::size_t pieces = 0;
};

constexpr std::array<StripSize, 14> kSizes{{{15, 18, 12},
                                            {30, 30, 20},
                                            {50, 24, 26},
                                            {45, 70, 36},
                                            {70, 55, 50},
                                            {100, 80, 60},
                                            {90, 140, 80},
                                            {120, 100, 100},
                                            {200, 150, 120},
                                            {140, 260, 160},
                                            {250, 250, 190},
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
    return strip;
}

} // namespace

std::vector<KnownStrip> stripsWithoutWaste() {
    strips::StripMaker maker{2026};
    std::vector<KnownStrip> made;
    for (const StripSize& size : kSizes) {
        for (const bool straightCutsOnly : {true, false}) {
            KnownStrip strip;
            strip.name = std::to_string(size.width) + "x" + std::to_string(size.length) + "/" +
                         std::to_string(size.pieces) + (straightCutsOnly ? "s" : "r");
            strip.task = maker.withoutWaste(size.width, size.length, size.pieces, straightCutsOnly);
            strip.shortest = size.length;
            made.push_back(std::move(strip));
        }
    }
    return made;
}

StripTask manyPieces(std::size_t count, bool mayTurn) {
    strips::StripMaker maker{3};
    StripTask task{1'000, std::nullopt, {}};
    for (std::size_t piece = 0; piece < count; ++piece)
        task.pieces.push_back({maker.between(20, 200), maker.between(20, 200), mayTurn, std::nullopt});
    return task;
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

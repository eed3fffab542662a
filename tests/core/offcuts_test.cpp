// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/offcuts.h"

#include "core/trade/units.h"

#include <gtest/gtest.h>

#include <random>

namespace holdfast::test {
namespace {

using namespace literals;

constexpr std::size_t kMost = 4;

TEST(Offcuts, OfAnEmptyFilmTheWholeIsOne) {
    const FilmArea film{0_mm, 0_mm, 500_mm, 300_mm};
    EXPECT_EQ(offcutsOf(film, {}, 100_mm, kMost), std::vector{film});
    EXPECT_TRUE(offcutsOf({0_mm, 0_mm, 500_mm, 99_mm}, {}, 100_mm, kMost).empty());
    EXPECT_TRUE(offcutsOf({}, {}, 100_mm, kMost).empty());
}

TEST(Offcuts, TheLargestComesFirstAndTheNextLiesBesideIt) {
    const FilmArea film{0_mm, 0_mm, 500_mm, 400_mm};
    const std::vector<FilmArea> taken{{0_mm, 0_mm, 300_mm, 250_mm}};
    // Beside it 200 × 400 (80,000 mm²), behind it 500 × 150 (75,000 mm²): then 300 × 150 of the second is
    // left.
    EXPECT_EQ(offcutsOf(film, taken, 100_mm, kMost),
              (std::vector<FilmArea>{{300_mm, 0_mm, 200_mm, 400_mm}, {0_mm, 250_mm, 300_mm, 150_mm}}));
    EXPECT_EQ(offcutsOf(film, taken, 100_mm, 1).size(), 1U);
}

TEST(Offcuts, TakenAreasMayOverlapAndReachOut) {
    const FilmArea film{0_mm, 0_mm, 300_mm, 300_mm};
    const std::vector<FilmArea> taken{{{-50}, {-50}, 200_mm, 400_mm}, {100_mm, 100_mm, 50_mm, 50_mm}};
    EXPECT_EQ(offcutsOf(film, taken, 100_mm, kMost), (std::vector<FilmArea>{{150_mm, 0_mm, 150_mm, 300_mm}}));
}

// Against a count over every cell: no larger empty rectangle exists than the first one found.
TEST(Offcuts, NoEmptyRectangleIsLargerThanTheFirst) {
    std::mt19937 random{4};
    const auto within = [&](std::int64_t least, std::int64_t most) {
        return std::uniform_int_distribution<std::int64_t>{least, most}(random);
    };
    for (int round = 0; round < 150; ++round) {
        const std::int64_t width = within(5, 14);
        const std::int64_t length = within(5, 14);
        std::vector<FilmArea> taken;
        for (std::int64_t count = within(0, 6); count > 0; --count)
            taken.push_back({{within(0, width)}, {within(0, length)}, {within(1, 5)}, {within(1, 5)}});
        const auto isEmpty = [&](std::int64_t across, std::int64_t along) {
            return std::ranges::none_of(taken, [&](const FilmArea& area) {
                return area.across.value <= across && across < (area.across + area.acrossSize).value &&
                       area.along.value <= along && along < (area.along + area.alongSize).value;
            });
        };
        std::int64_t largest = 0;
        for (std::int64_t left = 0; left < width; ++left)
            for (std::int64_t top = 0; top < length; ++top) {
                std::int64_t reach = length;
                for (std::int64_t across = left; across < width; ++across) {
                    std::int64_t along = top;
                    while (along < reach && isEmpty(across, along))
                        ++along;
                    reach = along;
                    if (across - left + 1 >= 2 && reach - top >= 2)
                        largest = std::max(largest, (across - left + 1) * (reach - top));
                }
            }
        const auto found = offcutsOf({{}, {}, {width}, {length}}, taken, 2_mm, kMost);
        EXPECT_EQ(found.empty() ? 0 : found.front().area(), largest) << "round " << round;
    }
}

} // namespace
} // namespace holdfast::test

// SPDX-License-Identifier: GPL-3.0-or-later
// A table that forgets an enumerator, or has one twice, does not compile: see core/trade/enumerators.h.

#include "core/trade/enumerators.h"

#include <gtest/gtest.h>

#include <array>
#include <utility>

namespace holdfast {
namespace {

enum class Tool { Hook, Knife, Roller };
enum class None {};

using NamedTool = std::pair<Tool, int>;

TEST(Enumerators, AreCounted) {
    EXPECT_EQ(enumeratorCount<Tool>(), 3u);
    EXPECT_EQ(enumeratorCount<None>(), 0u);
}

TEST(Enumerators, TableHasEachOnce) {
    EXPECT_TRUE(hasEach<Tool>(std::array{Tool::Roller, Tool::Hook, Tool::Knife}));
    EXPECT_TRUE(hasEach<Tool>(
        std::array{NamedTool{Tool::Hook, 1}, NamedTool{Tool::Knife, 2}, NamedTool{Tool::Roller, 3}},
        &NamedTool::first));
    EXPECT_FALSE(hasEach<Tool>(std::array{Tool::Hook, Tool::Knife}));
    EXPECT_FALSE(hasEach<Tool>(std::array{Tool::Hook, Tool::Knife, Tool::Knife}));
    EXPECT_FALSE(hasEach<Tool>(std::array{Tool::Hook, Tool::Knife, Tool::Roller, Tool::Hook}));
}

} // namespace
} // namespace holdfast

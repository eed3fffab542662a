// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/size_changes.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using Sizes = std::vector<std::string>;
using Renamed = std::vector<std::pair<std::string, std::string>>;

SizeChanges changesOf(const Sizes& before, const Sizes& after, bool areInUse = true) {
    return sizeChanges(before, after, [areInUse](const std::string&) { return areInUse; });
}

TEST(SizeChanges, TheSameListHasNone) {
    EXPECT_TRUE(changesOf({"S", "M"}, {"S", "M"}).empty());
    EXPECT_TRUE(changesOf({}, {}).empty());
}

TEST(SizeChanges, OneMoreIsAddedWhereverItIs) {
    EXPECT_EQ(changesOf({"S", "M"}, {"XS", "S", "M"}).added, Sizes{"XS"});
    EXPECT_EQ(changesOf({"S", "L"}, {"S", "M", "L"}).added, Sizes{"M"});
    EXPECT_EQ(changesOf({"S", "M"}, {"S", "M", "L"}).added, Sizes{"L"});
}

TEST(SizeChanges, OneLessIsGone) {
    EXPECT_EQ(changesOf({"S", "M", "L"}, {"S", "L"}).gone, Sizes{"M"});
    EXPECT_EQ(changesOf({"S", "M"}, {}).gone, (Sizes{"S", "M"}));
}

TEST(SizeChanges, OneInThePlaceOfAnotherIsItsNewName) {
    const SizeChanges changes = changesOf({"S", "M", "XL"}, {"S", "M", "Extra large"});
    EXPECT_EQ(changes.renamed, (Renamed{{"XL", "Extra large"}}));
    EXPECT_TRUE(changes.gone.empty());
    EXPECT_TRUE(changes.added.empty());
    EXPECT_EQ(changesOf({"1", "2"}, {"S", "M"}).renamed, (Renamed{{"1", "S"}, {"2", "M"}}));
}

TEST(SizeChanges, OneThatIsInNoUseIsGoneAndTheOtherNew) {
    const SizeChanges changes = changesOf({"S", "M"}, {"S", "XL"}, false);
    EXPECT_TRUE(changes.renamed.empty());
    EXPECT_EQ(changes.gone, Sizes{"M"});
    EXPECT_EQ(changes.added, Sizes{"XL"});
}

TEST(SizeChanges, TwoForOneNameNothing) {
    const SizeChanges changes = changesOf({"S", "M", "L"}, {"S", "M1", "M2", "L"});
    EXPECT_TRUE(changes.renamed.empty());
    EXPECT_EQ(changes.gone, Sizes{"M"});
    EXPECT_EQ(changes.added, (Sizes{"M1", "M2"}));
}

TEST(SizeChanges, AnotherOrderIsNoChange) {
    EXPECT_TRUE(changesOf({"S", "M", "L"}, {"L", "M", "S"}).empty());
}

} // namespace
} // namespace holdfast

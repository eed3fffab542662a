// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/placement.h"
#include "core/garments/placement_presets.h"

#include <gtest/gtest.h>

#include <array>
#include <set>

using namespace holdfast;

namespace {

constexpr std::array<std::string_view, 8> kOutlines{"tee", "long-sleeve", "hoodie",   "tote",
                                                    "bib", "cap",         "bodysuit", "apron"};

} // namespace

TEST(Placement, EveryDrawnGarmentHasAUsualPlace) {
    for (const std::string_view outline : kOutlines) {
        ASSERT_FALSE(presetsFor(outline).empty()) << outline;
        std::set<Placement> seen;
        for (const PlacementPreset& preset : presetsFor(outline)) {
            EXPECT_TRUE(seen.insert(preset.placement).second) << outline << " names a place twice";
            EXPECT_GT(preset.below, Millimetres{}) << outline;
            EXPECT_GT(preset.wide, Millimetres{}) << outline;
            EXPECT_LE(preset.wide, preset.widest) << outline;
            EXPECT_GT(preset.tallest, Millimetres{}) << outline;
        }
    }
}

TEST(Placement, TeeTakesChestLeftChestBackAndSleeve) {
    const auto presets = presetsFor("tee");
    ASSERT_EQ(presets.size(), 4U);
    EXPECT_EQ(presets[0].placement, Placement::Chest);
    EXPECT_EQ(presets[1].placement, Placement::LeftChest);
    EXPECT_EQ(presets[2].placement, Placement::Back);
    EXPECT_EQ(presets[3].placement, Placement::Sleeve);
}

TEST(Placement, LeftChestLiesToTheWearersLeftAndChestInTheMiddle) {
    for (const std::string_view outline : kOutlines) {
        if (const auto left = presetFor(outline, Placement::LeftChest)) {
            EXPECT_GT(left->aside, Millimetres{}) << outline;
        }
        for (const Placement middle : {Placement::Chest, Placement::Front, Placement::Back}) {
            if (const auto preset = presetFor(outline, middle)) {
                EXPECT_EQ(preset->aside, Millimetres{}) << outline;
            }
        }
    }
}

TEST(Placement, GarmentsWithoutAChestAreDecoratedInFront) {
    for (const std::string_view outline : {"tote", "bib", "cap", "apron"}) {
        EXPECT_EQ(presetsFor(outline).front().placement, Placement::Front) << outline;
        EXPECT_FALSE(presetFor(outline, Placement::Chest)) << outline;
    }
}

TEST(Placement, GarmentThatIsNotDrawnHasNone) {
    EXPECT_TRUE(presetsFor("").empty());
    EXPECT_TRUE(presetsFor("scarf").empty());
    EXPECT_FALSE(presetFor("cap", Placement::Back));
}

TEST(Placement, IsSaidInWords) {
    EXPECT_EQ(placementName(Placement::Chest), "chest");
    EXPECT_EQ(placementName(Placement::LeftChest), "left chest");
    EXPECT_EQ(placementName(Placement::Front), "front");
    EXPECT_EQ(placementName(Placement::Back), "back");
    EXPECT_EQ(placementName(Placement::Sleeve), "sleeve");
}

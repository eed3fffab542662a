// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/garments/placement_presets.h"

#include "core/garments/garment_scale.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast {

namespace {

using namespace literals;

// Of a middle size; the usual placement first. below, aside, wide, widest, tallest.
constexpr std::array kTee{
    PlacementPreset{Placement::Chest, 75_mm, 0_mm, 280_mm, 360_mm, 420_mm},
    PlacementPreset{Placement::LeftChest, 90_mm, 100_mm, 90_mm, 120_mm, 120_mm},
    PlacementPreset{Placement::Back, 100_mm, 0_mm, 300_mm, 360_mm, 450_mm},
    PlacementPreset{Placement::Sleeve, 95_mm, 316_mm, 75_mm, 90_mm, 80_mm},
};

constexpr std::array kLongSleeve{
    PlacementPreset{Placement::Chest, 75_mm, 0_mm, 280_mm, 360_mm, 420_mm},
    PlacementPreset{Placement::LeftChest, 90_mm, 100_mm, 90_mm, 120_mm, 120_mm},
    PlacementPreset{Placement::Back, 100_mm, 0_mm, 300_mm, 360_mm, 450_mm},
    PlacementPreset{Placement::Sleeve, 250_mm, 330_mm, 60_mm, 85_mm, 80_mm},
};

// Above the pocket, at the side of the zip: across the middle of the chest there is none. The back begins
// under the hood.
constexpr std::array kHoodie{
    PlacementPreset{Placement::LeftChest, 70_mm, 105_mm, 92_mm, 120_mm, 110_mm},
    PlacementPreset{Placement::Back, 150_mm, 0_mm, 300_mm, 360_mm, 400_mm},
    PlacementPreset{Placement::Sleeve, 260_mm, 353_mm, 60_mm, 85_mm, 80_mm},
};

constexpr std::array kTote{
    PlacementPreset{Placement::Front, 90_mm, 0_mm, 240_mm, 320_mm, 225_mm},
    PlacementPreset{Placement::Back, 90_mm, 0_mm, 240_mm, 320_mm, 225_mm},
};

constexpr std::array kBib{
    PlacementPreset{Placement::Front, 45_mm, 0_mm, 110_mm, 130_mm, 125_mm},
};

// Well above the snaps.
constexpr std::array kBodysuit{
    PlacementPreset{Placement::Chest, 40_mm, 0_mm, 120_mm, 160_mm, 150_mm},
    PlacementPreset{Placement::LeftChest, 45_mm, 45_mm, 50_mm, 60_mm, 60_mm},
    PlacementPreset{Placement::Back, 45_mm, 0_mm, 120_mm, 160_mm, 160_mm},
};

// From the button on the crown down the front panel.
constexpr std::array kCap{
    PlacementPreset{Placement::Front, 42_mm, 0_mm, 85_mm, 100_mm, 52_mm},
};

// Above the pocket.
constexpr std::array kApron{
    PlacementPreset{Placement::Front, 80_mm, 0_mm, 180_mm, 240_mm, 220_mm},
    PlacementPreset{Placement::LeftChest, 80_mm, 60_mm, 80_mm, 100_mm, 100_mm},
};

struct OutlinePresets {
    std::string_view outline;
    std::span<const PlacementPreset> presets;
};

constexpr std::array kOutlines{
    OutlinePresets{"tee", kTee},       OutlinePresets{"long-sleeve", kLongSleeve},
    OutlinePresets{"hoodie", kHoodie}, OutlinePresets{"tote", kTote},
    OutlinePresets{"bib", kBib},       OutlinePresets{"bodysuit", kBodysuit},
    OutlinePresets{"cap", kCap},       OutlinePresets{"apron", kApron},
};

} // namespace

std::span<const PlacementPreset> presetsFor(std::string_view outline) {
    const auto found = std::ranges::find(kOutlines, outline, &OutlinePresets::outline);
    return found == kOutlines.end() ? std::span<const PlacementPreset>{} : found->presets;
}

std::optional<PlacementPreset> presetFor(std::string_view outline, Placement placement) {
    const auto presets = presetsFor(outline);
    const auto found = std::ranges::find(presets, placement, &PlacementPreset::placement);
    return found == presets.end() ? std::nullopt : std::optional{*found};
}

std::optional<PlacementPreset> presetFor(std::string_view outline, Placement placement,
                                         std::string_view size) {
    auto preset = presetFor(outline, placement);
    if (!preset)
        return preset;
    const double ratio = millimetresPerUnit(outline, size) / millimetresPerUnit(outline, "M");
    const auto scaled = [](Millimetres length, double by) {
        return Millimetres{static_cast<std::int64_t>(std::floor(static_cast<double>(length.value) * by))};
    };
    const double smaller = std::min(1.0, ratio);
    preset->below = scaled(preset->below, placement == Placement::Sleeve ? ratio : smaller);
    preset->aside = scaled(preset->aside, ratio);
    preset->wide = scaled(preset->wide, smaller);
    preset->widest = scaled(preset->widest, smaller);
    preset->tallest = scaled(preset->tallest, smaller);
    return preset;
}

} // namespace holdfast

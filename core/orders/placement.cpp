#include "core/orders/placement.h"

#include <algorithm>
#include <array>

namespace holdfast {

namespace {

using namespace literals;

// Of a middle size; the usual placement first. below, aside, wide, widest, tallest.
constexpr std::array kTee{
    PlacementPreset{Placement::Chest, 75_mm, 0_mm, 280_mm, 360_mm, 420_mm},
    PlacementPreset{Placement::LeftChest, 90_mm, 100_mm, 90_mm, 120_mm, 120_mm},
    PlacementPreset{Placement::Back, 100_mm, 0_mm, 300_mm, 360_mm, 450_mm},
    PlacementPreset{Placement::Sleeve, 130_mm, 300_mm, 75_mm, 100_mm, 90_mm},
};

constexpr std::array kLongSleeve{
    PlacementPreset{Placement::Chest, 75_mm, 0_mm, 280_mm, 360_mm, 420_mm},
    PlacementPreset{Placement::LeftChest, 90_mm, 100_mm, 90_mm, 120_mm, 120_mm},
    PlacementPreset{Placement::Back, 100_mm, 0_mm, 300_mm, 360_mm, 450_mm},
    PlacementPreset{Placement::Sleeve, 250_mm, 330_mm, 60_mm, 90_mm, 380_mm},
};

// Above the pocket, beside the zip; the back begins under the hood.
constexpr std::array kHoodie{
    PlacementPreset{Placement::LeftChest, 70_mm, 105_mm, 92_mm, 120_mm, 110_mm},
    PlacementPreset{Placement::Chest, 70_mm, 0_mm, 240_mm, 300_mm, 200_mm},
    PlacementPreset{Placement::Back, 150_mm, 0_mm, 300_mm, 360_mm, 400_mm},
    PlacementPreset{Placement::Sleeve, 260_mm, 340_mm, 60_mm, 90_mm, 360_mm},
};

constexpr std::array kTote{
    PlacementPreset{Placement::Front, 90_mm, 0_mm, 240_mm, 320_mm, 280_mm},
    PlacementPreset{Placement::Back, 90_mm, 0_mm, 240_mm, 320_mm, 280_mm},
};

constexpr std::array kBib{
    PlacementPreset{Placement::Front, 45_mm, 0_mm, 110_mm, 160_mm, 150_mm},
};

// Well above the snaps.
constexpr std::array kBodysuit{
    PlacementPreset{Placement::Chest, 40_mm, 0_mm, 120_mm, 160_mm, 150_mm},
    PlacementPreset{Placement::LeftChest, 45_mm, 45_mm, 50_mm, 60_mm, 60_mm},
    PlacementPreset{Placement::Back, 45_mm, 0_mm, 120_mm, 160_mm, 160_mm},
};

// From the button on the crown down the front panel.
constexpr std::array kCap{
    PlacementPreset{Placement::Front, 50_mm, 0_mm, 85_mm, 120_mm, 55_mm},
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

std::string placementName(Placement placement) {
    switch (placement) {
    case Placement::Chest:
        return "chest";
    case Placement::LeftChest:
        return "left chest";
    case Placement::Front:
        return "front";
    case Placement::Back:
        return "back";
    case Placement::Sleeve:
        return "sleeve";
    }
    return {};
}

} // namespace holdfast

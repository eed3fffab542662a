// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A blank style: an undecorated garment as its maker sells it, in sizes and colours, and what its label says.

#include "core/facts/care_limits.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/money.h"
#include "core/trade/result.h"
#include "core/trade/units.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

enum class Fibre { Cotton, Linen, Viscose, Wool, Silk, Polyester, Polyamide, Acrylic, Elastane, Other };

struct FibreShare {
    Fibre fibre = Fibre::Cotton;
    int percent = 0;

    bool operator==(const FibreShare&) const = default;
};

// How far cloth gives, and how far a film can follow it.
enum class Stretch { None, Some, High };

enum class Coating { None, WaterRepellent, Waxed };

enum class Obstacle { Zip, Buttons, Seams, ThickHem };
enum class WayRound { Pillow, Turn, SmallPlaten };

// Something that lies between platen and cloth, and how this style is pressed anyway.
struct ObstacleOnStyle {
    Obstacle obstacle = Obstacle::Zip;
    std::optional<WayRound> way;

    bool operator==(const ObstacleOnStyle&) const = default;
};

// The sewn-in label as read by a person. A style without one has unknown fibres and is held.
struct FabricLabel {
    std::vector<FibreShare> fibres;
    Stretch stretch = Stretch::None;
    Coating coating = Coating::None;
    std::optional<Celsius> highestSafe; // of the platen, where the label or its maker gives one
    CareLimits care;
    LocalDate readOn{};

    bool operator==(const FabricLabel&) const = default;
};

// Fibres from the label must be 1 to 100 % each, each named once, and add to 100.
Result<Done> checkFibres(std::span<const FibreShare> fibres);

struct Colour {
    ColourId id;
    std::string name;
    std::uint32_t rgb = 0;
    bool isRetired = false; // not offered for new work

    bool operator==(const Colour&) const = default;
};

struct BlankStyle {
    BlankStyleId id;
    std::string name;    // "Tee"
    std::string outline; // which drawing shows it: tee, long-sleeve, hoodie, tote, bib, bodysuit, cap, apron
    std::vector<std::string> sizes;
    std::vector<Colour> colours;
    std::optional<FabricLabel> label;
    std::vector<ObstacleOnStyle> obstacles;
    std::string notPrewashedBecause; // empty: blanks of this style are washed before they are pressed
    Grams weight;
    Money cost;
    std::string supplier{}; // who it is bought from; empty: not written down
    bool forChild = false;
    bool sleepwear = false;
    bool hasCords = false;
    std::string lawCheckedBy; // who looked up the local rules for children's wear, sleepwear, cords
    bool isRetired = false;   // not offered for new work; what there is of it is used up

    bool washedFirst() const { return notPrewashedBecause.empty(); }
    const Colour* colour(ColourId colourId) const;
};

Phrase fibreName(Fibre fibre); // "cotton"
// "80 % cotton, 20 % polyester", descending by percent.
Sentence fibreText(std::span<const FibreShare> fibres);
Phrase obstacleName(Obstacle obstacle); // "zip"
Phrase wayRoundName(WayRound way);      // "pressing pillow"

} // namespace holdfast

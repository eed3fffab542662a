// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A blank lot: a received batch of one style, size and colour, with a ledger of units. Washing part of a lot
// splits it: the washed units become a lot of their own whose parent is the old one.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/units.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast {

enum class Drying { Line, TumbleLow, Tumble };

struct WashLoad {
    WashLoadId id;
    Instant startedAt;
    std::string detergent;
    bool softener = false;
    Celsius water{30};
    Drying drying = Drying::Line;
    bool dryerSheet = false;
    std::optional<Instant> dryAt; // set when a person found the load dry

    bool isDry() const { return dryAt.has_value(); }
    // Softener and dryer sheets leave a film on the fibres that adhesive does not grip.
    bool leftSoftener() const { return softener || dryerSheet; }
};

// Measured on one blank of a lot, laid flat, before and after its load.
struct Shrinkage {
    Millimetres lengthBefore, lengthAfter;
    Millimetres widthBefore, widthAfter;

    bool operator==(const Shrinkage&) const = default;
};

struct BlankLot {
    BlankLotId id;
    BlankStyleId style;
    std::string size;
    ColourId colour;
    LocalDate receivedOn{};
    std::optional<BlankLotId> parent;
    std::optional<WashLoadId> lastLoad; // the load this lot was last washed in
    std::optional<Shrinkage> shrinkage;
    std::int64_t unitsLeft = 0; // sum of the lot's ledger
};

// Dimensional change in percent of the measure before washing; negative is shrinkage (ISO 5077:
// (x_t − x_0)/x_0·100). REQUIRES: before > 0.
double dimensionalChange(Millimetres before, Millimetres after);

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How long the maker's hands take for each kind of step at the press. The defaults are common practice, no
// source; the shop's own are settings.

#include "core/trade/result.h"
#include "core/trade/units.h"

#include <cstdint>
#include <string_view>

namespace holdfast {

inline constexpr std::int64_t kLeastHandSeconds = 1;
inline constexpr std::int64_t kMostHandSeconds = 600;

struct HandTimes {
    Seconds readTag{5};
    Seconds lintRoll{15};
    Seconds wayRound{20};
    Seconds placeDecal{25};
    Seconds peel{10}; // of one decal
    Seconds turn{10};
    Seconds look{10};

    bool operator==(const HandTimes&) const = default;
};

// One of them: its field in a form, its words, and where it is.
struct HandTime {
    std::string_view field; // "handsLintRoll"
    Phrase name;            // "Lint rolling"
    Seconds HandTimes::* time;
};

inline constexpr HandTime kAllHandTimes[] = {
    {"handsReadTag", phrase("Reading the tag"), &HandTimes::readTag},
    {"handsLintRoll", phrase("Lint rolling"), &HandTimes::lintRoll},
    {"handsWayRound", phrase("A way round"), &HandTimes::wayRound},
    {"handsPlaceDecal", phrase("Placing a decal"), &HandTimes::placeDecal},
    {"handsPeel", phrase("Peeling a decal"), &HandTimes::peel},
    {"handsTurn", phrase("Turning the garment"), &HandTimes::turn},
    {"handsLook", phrase("Looking for texture"), &HandTimes::look},
};

// Names the field of one that is not from kLeastHandSeconds to kMostHandSeconds.
Result<Done> checkHandTimes(const HandTimes& hands);

} // namespace holdfast

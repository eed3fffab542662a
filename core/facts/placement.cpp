// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/placement.h"

namespace holdfast {

Phrase placementName(Placement placement) {
    switch (placement) {
    case Placement::Chest:
        return phrase("chest");
    case Placement::LeftChest:
        return phrase("left chest");
    case Placement::Front:
        return phrase("front");
    case Placement::Back:
        return phrase("back");
    case Placement::Sleeve:
        return phrase("sleeve");
    }
    return {};
}

Side sideOf(Placement placement) {
    switch (placement) {
    case Placement::Chest:
    case Placement::LeftChest:
    case Placement::Front:
        return Side::Front;
    case Placement::Back:
        return Side::Back;
    case Placement::Sleeve:
        return Side::Sleeve;
    }
    return Side::Front;
}

Phrase sideName(Side side) {
    switch (side) {
    case Side::Front:
        return phrase("front");
    case Side::Back:
        return phrase("back");
    case Side::Sleeve:
        return phrase("sleeve");
    }
    return {};
}

} // namespace holdfast

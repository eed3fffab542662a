// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/placement.h"

namespace holdfast {

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

std::string sideName(Side side) {
    switch (side) {
    case Side::Front:
        return "front";
    case Side::Back:
        return "back";
    case Side::Sleeve:
        return "sleeve";
    }
    return {};
}

} // namespace holdfast

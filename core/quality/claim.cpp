// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/claim.h"

namespace holdfast {

bool isOfPressing(Fault fault) {
    switch (fault) {
    case Fault::EdgeLifts:
    case Fault::CameOff:
    case Fault::Cracked:
    case Fault::Bubbled:
    case Fault::Faded:
    case Fault::Scorched:
        return true;
    case Fault::BlankGaveWay:
    case Fault::NotAsOrdered:
    case Fault::Other:
        break;
    }
    return false;
}

std::string_view faultWords(Fault fault) {
    switch (fault) {
    case Fault::EdgeLifts:
        return "edge lifts";
    case Fault::CameOff:
        return "came off";
    case Fault::Cracked:
        return "cracked";
    case Fault::Bubbled:
        return "bubbles or creases";
    case Fault::Faded:
        return "faded";
    case Fault::Scorched:
        return "scorched or marked by the platen";
    case Fault::BlankGaveWay:
        return "the blank gave way";
    case Fault::NotAsOrdered:
        return "not as ordered";
    case Fault::Other:
        return "something else";
    }
    return {};
}

std::string_view answerWords(ClaimAnswer answer) {
    switch (answer) {
    case ClaimAnswer::PressedAgain:
        return "pressed again";
    case ClaimAnswer::MadeAgain:
        return "made again";
    case ClaimAnswer::MoneyBack:
        return "money back";
    case ClaimAnswer::Advised:
        return "advised on washing";
    case ClaimAnswer::NotOurs:
        return "not our fault";
    }
    return {};
}

} // namespace holdfast

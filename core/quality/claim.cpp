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

Phrase faultWords(Fault fault) {
    switch (fault) {
    case Fault::EdgeLifts:
        return phrase("edge lifts");
    case Fault::CameOff:
        return phrase("came off");
    case Fault::Cracked:
        return phrase("cracked");
    case Fault::Bubbled:
        return phrase("bubbles or creases");
    case Fault::Faded:
        return phrase("faded");
    case Fault::Scorched:
        return phrase("scorched or marked by the platen");
    case Fault::BlankGaveWay:
        return phrase("the blank gave way");
    case Fault::NotAsOrdered:
        return phrase("not as ordered");
    case Fault::Other:
        return phrase("something else");
    }
    return {};
}

Phrase answerWords(ClaimAnswer answer) {
    switch (answer) {
    case ClaimAnswer::PressedAgain:
        return phrase("pressed again");
    case ClaimAnswer::MadeAgain:
        return phrase("made again");
    case ClaimAnswer::MoneyBack:
        return phrase("money back");
    case ClaimAnswer::Advised:
        return phrase("advised on washing");
    case ClaimAnswer::NotOurs:
        return phrase("not our fault");
    }
    return {};
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/hand_times.h"

#include "core/trade/limits.h"

namespace holdfast {

Result<Done> checkHandTimes(const HandTimes& hands) {
    for (const HandTime& hand : kAllHandTimes) {
        auto checked = within((hands.*hand.time).count(), {.field = hand.field,
                                                           .what = hand.name,
                                                           .least = kLeastHandSeconds,
                                                           .most = kMostHandSeconds,
                                                           .unit = " s"});
        if (!checked.ok())
            return checked;
    }
    return Done{};
}

} // namespace holdfast

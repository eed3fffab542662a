// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A hold that a person lifted, for one attempt at a garment. It is stored with its reason and shows for ever
// in the garment's history.

#include "core/facts/rule.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"

#include <string>

namespace holdfast {

struct Waiver {
    GarmentId garment;
    int attempt = 1;
    Rule rule = Rule::BlankUnwashed;
    std::string reason;
    Instant at;
};

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person does when something comes back. Each is one journaled action; bad input comes back as an
// Error that names the field, and nothing is written.

#include "core/quality/claim.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <optional>
#include <string>

namespace holdfast::db {

struct ClaimTold {
    GarmentId garment;
    std::optional<DecalId> decal; // of that garment; none: the garment as a whole
    LocalDate on{};               // from the day it was handed over until today
    Fault fault = Fault::EdgeLifts;
    std::optional<std::int64_t> washes; // 0–500
    std::string note;                   // up to 300 characters
};

// Of a garment that was handed over.
Result<ClaimId> recordClaim(Shop& shop, const ClaimTold& told, const Now& now);

// What was done about it today; may be changed. Money is not moved by it, nor a garment made.
Result<Done> answerClaim(Shop& shop, ClaimId claim, ClaimAnswer answer, const Now& now);

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A task made ready to be packed: which pieces can lie on the strip at all, and the way back to a packing.

#include "core/cutting/strip_frame.h"

namespace holdfast {

struct StripPlan {
    FillFrame frame;               // its end: the strip's, or beyond all that could be needed
    std::vector<FillPiece> pieces; // neither pinned nor too large either way; in the task's order

    bool hasLength = false; // the strip ends: not all need find room
};

// A piece that may lie only turned is turned in the plan. REQUIRES: a task that checkTask passes.
StripPlan planOf(const StripTask& task);

// The pins and what was laid.
StripPacking packingOf(const StripTask& task, const std::vector<FilledPlace>& laid);

// Lays the pieces in rows, longest first, beyond everything else: poor and quick, for when there is no time
// left.
std::vector<FilledPlace> shelvedAfter(const FillFrame& frame, std::int64_t along,
                                      std::vector<FillPiece> pieces);

// Whether one is better: more of the earlier pieces, then shorter. REQUIRES: of one task.
bool isBetter(const StripPacking& one, const StripPacking& other);

} // namespace holdfast

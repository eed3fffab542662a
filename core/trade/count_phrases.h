// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Counts that many sentences have in them: "1 day", "6 days".

#include "core/trade/sentence.h"

#include <cstdint>

namespace holdfast {

Sentence dayCount(std::int64_t days);
Sentence hourCount(std::int64_t hours); // "6 h"

} // namespace holdfast

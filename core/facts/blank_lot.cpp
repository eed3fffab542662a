// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/blank_lot.h"

#include "core/trade/assertion.h"

namespace holdfast {

double dimensionalChange(Millimetres before, Millimetres after) {
    HOLDFAST_ASSERT(before.value > 0);
    return static_cast<double>((after - before).value) / static_cast<double>(before.value) * 100.0;
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which holds stop the knife: film that is cut in spite of them would be cut in vain.

#include "core/facts/order.h"
#include "core/holds/finding.h"

#include <span>

namespace holdfast {

// The first of a garment's findings that holds and for which this decal is not to be cut yet; none: it may be
// cut, as far as the garment goes. What is wrong with a roll holds that roll, not the decal.
const Finding* stopsTheKnife(std::span<const Finding> findings, const Decal& decal);

} // namespace holdfast

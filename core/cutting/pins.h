// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Pinning a decal where it lies on a nest, and letting it go. See nest.h.

#include "core/cutting/nest.h"

namespace holdfast {

// The nest with that decal pinned or let go. Nothing moves; the least length is worked out again, because a
// pin may raise it. REQUIRES: a decal on this nest.
Nest withPin(const Nest& nest, DecalId decal, bool isPinned);

} // namespace holdfast

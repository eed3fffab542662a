// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The wording that a customer of a web shop asked for, on a decal like one that was made before.

#include "core/orders/order_draft.h"
#include "core/trade/result.h"

#include <string>

namespace holdfast::app {

// As large as fits where the other wording was, in its face and film, with the outline to keep. An error for
// what cannot be cut: a letter without a shape, more than 60 characters. It needs fonts, and no window.
Result<DecalDraft> lettered(const DecalDraft& like, const GarmentDraft& on, const std::string& wording);

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The cloth of a drawn garment whose colour is not chosen yet: undyed, by day and in the evening.

#include "app/theme/tokens.h"

namespace holdfast::app {

inline QColor undyedCloth() {
    return light() == Light::Day ? blended(tokens().sunk, tokens().thread, 0.25) : tokens().board;
}

} // namespace holdfast::app

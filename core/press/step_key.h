// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the key of a step at the press ("press-2", see route.h) says of it.

#include <string_view>

namespace holdfast {

// Cooling needs neither platen nor hands, so the next garment is pressed meanwhile.
inline bool isWaitingKey(std::string_view key) {
    return key.starts_with("cool");
}

// The garment lies under the closed platen.
inline bool isHeatKey(std::string_view key) {
    return key.starts_with("press") || key.starts_with("preheat") || key.starts_with("finish");
}

} // namespace holdfast

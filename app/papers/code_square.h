// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A QR code (ISO/IEC 18004) by libqrencode. It holds what core/trade/paper_code.h makes of a garment's label,
// an order's number or a roll's number, and nothing else: never a name or a telephone number.

#include <QPainterPath>

#include <string_view>
#include <vector>

namespace holdfast::app {

struct CodeSquare {
    int side = 0; // modules, without the quiet zone
    std::vector<bool> dark;

    bool isDark(int x, int y) const {
        return dark.at(static_cast<std::size_t>(y) * static_cast<std::size_t>(side) +
                       static_cast<std::size_t>(x));
    }
};

// Error correction level Q: a quarter of it may be creased or smudged.
// REQUIRES: 1 to 60 plain ASCII characters.
CodeSquare codeSquareOf(std::string_view text);

// Its dark modules as one outline, in a square of this width with the quiet zone of four modules in it.
QPainterPath codeOutline(const CodeSquare& code, double width);

} // namespace holdfast::app

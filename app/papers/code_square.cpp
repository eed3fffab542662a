// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/code_square.h"

#include <QRegion>
#include <QTransform>

#include <algorithm>
#include <memory>
#include <string>

#include <qrencode.h>

namespace holdfast::app {

namespace {

constexpr int kQuietZone = 4; // modules, as the standard asks

} // namespace

CodeSquare codeSquareOf(std::string_view text) {
    Q_ASSERT(!text.empty() && text.size() <= 60);
    Q_ASSERT(std::ranges::all_of(text, [](char letter) { return letter >= ' ' && letter < 0x7f; }));
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> made(
        QRcode_encodeString8bit(std::string(text).c_str(), 0, QR_ECLEVEL_Q), &QRcode_free);
    CodeSquare code;
    if (!made)
        return code; // only where there is no memory
    code.side = made->width;
    const auto modules = static_cast<std::size_t>(code.side) * static_cast<std::size_t>(code.side);
    code.dark.reserve(modules);
    for (std::size_t at = 0; at < modules; ++at)
        code.dark.push_back((made->data[at] & 1) != 0);
    return code;
}

QPainterPath codeOutline(const CodeSquare& code, double width) {
    QRegion dark;
    for (int y = 0; y < code.side; ++y)
        for (int x = 0; x < code.side; ++x)
            if (code.isDark(x, y))
                dark += QRect(x + kQuietZone, y + kQuietZone, 1, 1);
    QPainterPath modules;
    modules.addRegion(dark);
    const double module = width / (code.side + 2 * kQuietZone);
    // One outline, so that no hair's breadth of white shows between neighbours.
    return QTransform::fromScale(module, module).map(modules.simplified());
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/shop_opening.h"

#include <utility>

namespace holdfast::app {

ShopOpening::ShopOpening(std::function<OpenedShop()> open) {
    if (open)
        m_thread = std::thread([this, open = std::move(open)] { m_opened = open(); });
}

std::optional<OpenedShop> ShopOpening::take() {
    wait();
    return std::exchange(m_opened, std::nullopt);
}

void ShopOpening::wait() {
    if (m_thread.joinable())
        m_thread.join();
}

} // namespace holdfast::app

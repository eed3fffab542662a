// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A shop file looked over and opened on a thread of its own, while the fonts are read and the window is made.

#include "db/journal/shop.h"

#include <functional>
#include <memory>
#include <optional>
#include <thread>

namespace holdfast::app {

using OpenedShop = Result<std::unique_ptr<db::Shop>>;

class ShopOpening {
public:
    // Begins at once. An empty function opens nothing.
    explicit ShopOpening(std::function<OpenedShop()> open);
    ~ShopOpening() { wait(); }
    ShopOpening(const ShopOpening&) = delete;
    ShopOpening& operator=(const ShopOpening&) = delete;

    // Waits for it, once. None: there was nothing to open.
    std::optional<OpenedShop> take();

private:
    void wait();

    std::optional<OpenedShop> m_opened;
    std::thread m_thread;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Held by the one Holdfast that has a shop open for writing: a lock on FILE.lock, freed by the system even if
// the program is killed. The file goes away with the lock.

#include "core/trade/result.h"

#include <filesystem>

namespace holdfast::db {

class ShopLock {
public:
    // An error in words where another Holdfast holds it or the folder cannot be written to.
    static Result<ShopLock> take(const std::filesystem::path& shopPath);

    ShopLock() = default;
    ShopLock(ShopLock&& other) noexcept;
    ShopLock& operator=(ShopLock&& other) noexcept;
    ShopLock(const ShopLock&) = delete;
    ShopLock& operator=(const ShopLock&) = delete;
    ~ShopLock();

private:
    void release();

    std::filesystem::path m_path;
    int m_file = -1;
};

} // namespace holdfast::db

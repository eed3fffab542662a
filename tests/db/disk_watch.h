// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Looks on at what is done to the disk: each call that succeeded, in its order.

#include <cstdint>
#include <string>
#include <string_view>

namespace holdfast::db::testing {

class DiskWatch {
public:
    virtual ~DiskWatch() = default;

    virtual void opened(int file, const char* path) = 0;
    virtual void wrote(int file, std::uint64_t at, std::string_view bytes) = 0;
    virtual void cut(int file, std::uint64_t length) = 0;
    virtual void synced(int file) = 0;
    virtual void removed(const char* path) = 0;
    virtual void renamed(const char* from, const char* to) = 0;
};

// One at a time, on one thread; nullptr: nobody.
void watchDisk(DiskWatch* watch);

} // namespace holdfast::db::testing

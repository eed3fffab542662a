// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A disk that fails when it is told to. SQLite's calls and our own go through it (it stands in front of the C
// library's in the test program), so that each of them can be made to fail once, or from some call on for
// ever.

#include <string>
#include <vector>

namespace holdfast::db::testing {

enum class DiskCall { Read, Write, Sync, Truncate, Lock, Rename, Unlink, Open, Make };

struct DiskFailure {
    std::vector<DiskCall> calls; // which of them are counted
    long at = 0;                 // the so-many-th of them fails, from 1
    int error = 0;               // errno: EIO, ENOSPC
    bool isForEver = false;      // so do all after it
    bool tearsWrites = false;    // half of what is to be written is written all the same
};

// While it lives, the disk fails as it says. One at a time; calls of all threads are counted.
class FailingDisk {
public:
    explicit FailingDisk(DiskFailure failure);
    FailingDisk(const FailingDisk&) = delete;
    FailingDisk& operator=(const FailingDisk&) = delete;
    ~FailingDisk();

    // How many of its calls there have been since it was made.
    static long counted();
    // Whether one of them has failed.
    static bool hasFailed();
};

} // namespace holdfast::db::testing

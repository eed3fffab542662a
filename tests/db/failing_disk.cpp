// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/failing_disk.h"

#include "tests/db/disk_watch.h"

#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <cerrno>
#include <cstdarg>
#include <optional>
#include <utility>

namespace holdfast::db::testing {

namespace {

std::optional<DiskFailure> failing; // changed only while one thread runs
std::atomic<long> calls{0};
std::atomic<bool> failed{false};
DiskWatch* watching = nullptr;

bool fails(DiskCall call) {
    if (!failing || std::ranges::find(failing->calls, call) == failing->calls.end())
        return false;
    const long number = ++calls;
    if (number < failing->at || (number > failing->at && !failing->isForEver))
        return false;
    failed = true;
    errno = failing->error;
    return true;
}

// The C library's own function of that name.
template <class Function>
Function* next(const char* name) {
    return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, name));
}

} // namespace

FailingDisk::FailingDisk(DiskFailure failure) {
    calls = 0;
    failed = false;
    failing = std::move(failure);
}

FailingDisk::~FailingDisk() {
    failing.reset();
}

long FailingDisk::counted() {
    return calls;
}

bool FailingDisk::hasFailed() {
    return failed;
}

namespace {

// A torn write: half of it is on the disk, and the call fails.
template <class Write>
ssize_t written(Write write, size_t count) {
    if (!fails(DiskCall::Write))
        return write(count);
    const int error = errno;
    if (failing->tearsWrites)
        (void)write(count / 2);
    errno = error;
    return -1;
}

// A call that succeeded is seen; answers what it answered.
template <class Outcome, class See>
Outcome seen(Outcome outcome, See see) {
    if (watching != nullptr && outcome >= 0) {
        const int error = errno;
        see(*watching, outcome);
        errno = error;
    }
    return outcome;
}

// What goes to a pipe or a screen is no file.
bool isFile(int file) {
    struct stat found{};
    return ::fstat(file, &found) == 0 && S_ISREG(found.st_mode);
}

} // namespace

void watchDisk(DiskWatch* watch) {
    watching = watch;
}

} // namespace holdfast::db::testing

namespace disk = holdfast::db::testing;

extern "C" {

ssize_t pwrite64(int file, const void* bytes, size_t count, off64_t at) {
    static const auto real = disk::next<ssize_t(int, const void*, size_t, off64_t)>("pwrite64");
    return disk::written(
        [&](size_t part) {
            return disk::seen(real(file, bytes, part, at), [&](auto& watch, ssize_t written) {
                watch.wrote(file, static_cast<std::uint64_t>(at),
                            {static_cast<const char*>(bytes), static_cast<size_t>(written)});
            });
        },
        count);
}
ssize_t write(int file, const void* bytes, size_t count) {
    static const auto real = disk::next<ssize_t(int, const void*, size_t)>("write");
    if (!disk::isFile(file))
        return real(file, bytes, count);
    return disk::written(
        [&](size_t part) {
            return disk::seen(real(file, bytes, part), [&](auto& watch, ssize_t written) {
                const off_t end = ::lseek(file, 0, SEEK_CUR);
                watch.wrote(file, static_cast<std::uint64_t>(end - written),
                            {static_cast<const char*>(bytes), static_cast<size_t>(written)});
            });
        },
        count);
}
ssize_t pread64(int file, void* bytes, size_t count, off64_t at) {
    static const auto real = disk::next<ssize_t(int, void*, size_t, off64_t)>("pread64");
    return disk::fails(disk::DiskCall::Read) ? -1 : real(file, bytes, count, at);
}
int mkdir(const char* path, mode_t mode) noexcept {
    static const auto real = disk::next<int(const char*, mode_t)>("mkdir");
    return disk::fails(disk::DiskCall::Make) ? -1 : real(path, mode);
}
int fsync(int file) {
    static const auto real = disk::next<int(int)>("fsync");
    return disk::fails(disk::DiskCall::Sync)
               ? -1
               : disk::seen(real(file), [&](auto& watch, int) { watch.synced(file); });
}
int fdatasync(int file) {
    static const auto real = disk::next<int(int)>("fdatasync");
    return disk::fails(disk::DiskCall::Sync)
               ? -1
               : disk::seen(real(file), [&](auto& watch, int) { watch.synced(file); });
}
int ftruncate64(int file, off64_t length) noexcept {
    static const auto real = disk::next<int(int, off64_t)>("ftruncate64");
    return disk::fails(disk::DiskCall::Truncate) ? -1 : disk::seen(real(file, length), [&](auto& watch, int) {
        watch.cut(file, static_cast<std::uint64_t>(length));
    });
}
int unlink(const char* path) noexcept {
    static const auto real = disk::next<int(const char*)>("unlink");
    return disk::fails(disk::DiskCall::Unlink)
               ? -1
               : disk::seen(real(path), [&](auto& watch, int) { watch.removed(path); });
}
int rename(const char* from, const char* to) noexcept {
    static const auto real = disk::next<int(const char*, const char*)>("rename");
    return disk::fails(disk::DiskCall::Rename)
               ? -1
               : disk::seen(real(from, to), [&](auto& watch, int) { watch.renamed(from, to); });
}
int renameat2(int fromFolder, const char* from, int toFolder, const char* to, unsigned flags) noexcept {
    static const auto real = disk::next<int(int, const char*, int, const char*, unsigned)>("renameat2");
    return disk::fails(disk::DiskCall::Rename)
               ? -1
               : disk::seen(real(fromFolder, from, toFolder, to, flags),
                            [&](auto& watch, int) { watch.renamed(from, to); });
}
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wshadow" // there is a struct of that name
int flock(int file, int operation) noexcept {
    static const auto real = disk::next<int(int, int)>("flock");
    return disk::fails(disk::DiskCall::Lock) ? -1 : real(file, operation);
}
#pragma GCC diagnostic pop
int open(const char* path, int flags, ...) {
    static const auto real = disk::next<int(const char*, int, ...)>("open");
    va_list rest;
    va_start(rest, flags);
    const auto mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    return disk::fails(disk::DiskCall::Open)
               ? -1
               : disk::seen(real(path, flags, mode),
                            [&](auto& watch, int file) { watch.opened(file, path); });
}
int open64(const char* path, int flags, ...) {
    static const auto real = disk::next<int(const char*, int, ...)>("open64");
    va_list rest;
    va_start(rest, flags);
    const auto mode = (flags & (O_CREAT | O_TMPFILE)) != 0 ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    return disk::fails(disk::DiskCall::Open)
               ? -1
               : disk::seen(real(path, flags, mode),
                            [&](auto& watch, int file) { watch.opened(file, path); });
}
int fcntl64(int file, int command, ...) {
    static const auto real = disk::next<int(int, int, ...)>("fcntl64");
    va_list rest;
    va_start(rest, command);
    void* const value = va_arg(rest, void*);
    va_end(rest);
    const bool isLock = command == F_SETLK || command == F_SETLKW;
    return isLock && disk::fails(disk::DiskCall::Lock) ? -1 : real(file, command, value);
}

} // extern "C"

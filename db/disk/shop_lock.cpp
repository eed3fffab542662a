// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/shop_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

namespace holdfast::db {

namespace {

constexpr mode_t kLockOwnerOnly = 0600;

// Whether the open file is still the one of that name: its last holder may have removed it meanwhile.
bool isStillNamed(int file, const std::filesystem::path& path) {
    struct stat opened{};
    struct stat named{};
    return fstat(file, &opened) == 0 && stat(path.c_str(), &named) == 0 && opened.st_ino == named.st_ino &&
           opened.st_dev == named.st_dev;
}

Error unwritable(const std::filesystem::path& shopPath, int reason) {
    const std::string folder = shopPath.parent_path().string();
    if (reason == ELOOP || reason == EISDIR)
        return plainError(said("{path}.lock is not a file of Holdfast’s. Move it away: Holdfast locks the "
                               "shop with a file of that name.",
                               {{"path", shopPath.string()}}));
    if (reason == ENOSPC || reason == EDQUOT)
        return plainError(
            said("The disk is full: there is no room in the folder {folder}.", {{"folder", folder}}));
    return plainError(said("The folder {folder} is read-only. Holdfast has to write next to the shop file; "
                           "change who may write there or move the shop file.",
                           {{"folder", folder}}));
}

Error notLocked(const std::filesystem::path& shopPath, int reason) {
    if (reason == EWOULDBLOCK)
        return plainError(
            said("This shop is open in another window of Holdfast. Go on there, or close it first."));
    return plainError(
        said("The disk of the folder {folder} cannot lock files, as some network folders cannot. Holdfast "
             "would not notice a second window there: move the shop file to a disk of this computer.",
             {{"folder", shopPath.parent_path().string()}}));
}

} // namespace

Result<ShopLock> ShopLock::take(const std::filesystem::path& shopPath) {
    ShopLock lock;
    lock.m_path = shopPath;
    lock.m_path += ".lock";
    for (;;) {
        lock.m_file = ::open(lock.m_path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, kLockOwnerOnly);
        if (lock.m_file < 0)
            return unwritable(shopPath, errno);
        if (flock(lock.m_file, LOCK_EX | LOCK_NB) != 0) {
            const int reason = errno;
            // Somebody else's lock: it is not ours to remove.
            ::close(std::exchange(lock.m_file, -1));
            return notLocked(shopPath, reason);
        }
        if (isStillNamed(lock.m_file, lock.m_path))
            return lock;
        ::close(std::exchange(lock.m_file, -1));
    }
}

ShopLock::ShopLock(ShopLock&& other) noexcept
    : m_path(std::move(other.m_path))
    , m_file(std::exchange(other.m_file, -1)) {}

ShopLock& ShopLock::operator=(ShopLock&& other) noexcept {
    if (this != &other) {
        release();
        m_path = std::move(other.m_path);
        m_file = std::exchange(other.m_file, -1);
    }
    return *this;
}

ShopLock::~ShopLock() {
    release();
}

void ShopLock::release() {
    if (m_file < 0)
        return;
    // Removed while still held, so that nobody's newer lock can be removed by mistake.
    ::unlink(m_path.c_str());
    ::close(std::exchange(m_file, -1));
}

} // namespace holdfast::db

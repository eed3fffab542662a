#include "db/journal/new_file.h"

#include <fcntl.h>
#include <stdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <string>
#include <utility>

namespace holdfast::db {

namespace {

constexpr mode_t kOwnerOnly = 0600;

Error taken(const std::filesystem::path& path) {
    return plainError("There is a file " + path.string() + " already. Choose another name.");
}

Error cannotWrite(const std::filesystem::path& path, int reason) {
    const std::string folder = path.parent_path().string();
    switch (reason) {
    case ENOENT:
    case ENOTDIR:
        return plainError("There is no folder " + folder + ".");
    case ENOSPC:
    case EDQUOT:
        return plainError("The disk is full: there is no room in the folder " + folder + ".");
    case ENAMETOOLONG:
        return plainError("The file name is too long.");
    default:
        return plainError("The folder " + folder + " cannot be written to. Choose another one.");
    }
}

// The disk keeps the name only once the folder is written out; a folder that cannot be is no reason to fail.
void syncFolder(const std::filesystem::path& folder) {
    const int opened = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (opened < 0)
        return;
    ::fsync(opened);
    ::close(opened);
}

} // namespace

NewFile::NewFile(std::filesystem::path path)
    : m_path(std::move(path))
    , m_temporary(m_path) {
    m_temporary += ".new-" + std::to_string(::getpid());
}

NewFile::NewFile(NewFile&& other) noexcept
    : m_path(std::move(other.m_path))
    , m_temporary(std::exchange(other.m_temporary, {})) {}

Result<NewFile> NewFile::begin(const std::filesystem::path& path) {
    struct stat found {};
    if (lstat(path.c_str(), &found) == 0)
        return taken(path);
    NewFile file{std::filesystem::absolute(path)};
    ::unlink(file.m_temporary.c_str()); // left by a program of the same number that was killed
    const int opened = ::open(file.m_temporary.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, kOwnerOnly);
    if (opened < 0) {
        const int reason = errno;
        file.m_temporary.clear();
        return cannotWrite(file.m_path, reason);
    }
    const bool isOwnersOnly = ::fchmod(opened, kOwnerOnly) == 0;
    ::close(opened);
    if (!isOwnersOnly)
        return cannotWrite(file.m_path, EPERM);
    return file;
}

NewFile::~NewFile() {
    if (m_temporary.empty())
        return;
    for (const char* part : {"", "-wal", "-shm", "-journal"}) {
        std::filesystem::path left = m_temporary;
        left += part;
        ::unlink(left.c_str());
    }
}

Result<Done> NewFile::keep() {
    const int opened = ::open(m_temporary.c_str(), O_RDONLY | O_CLOEXEC);
    if (opened < 0)
        return cannotWrite(m_path, errno);
    const bool isOnDisk = ::fsync(opened) == 0;
    const int reason = errno;
    ::close(opened);
    if (!isOnDisk)
        return cannotWrite(m_path, reason);

    int outcome = ::renameat2(AT_FDCWD, m_temporary.c_str(), AT_FDCWD, m_path.c_str(), RENAME_NOREPLACE);
    if (outcome != 0 && (errno == EINVAL || errno == ENOSYS)) {
        // A disk that cannot rename without replacing.
        struct stat found {};
        if (lstat(m_path.c_str(), &found) == 0)
            return taken(m_path);
        outcome = ::rename(m_temporary.c_str(), m_path.c_str());
    }
    if (outcome != 0)
        return errno == EEXIST ? taken(m_path) : cannotWrite(m_path, errno);
    m_temporary.clear();
    syncFolder(m_path.parent_path());
    return Done{};
}

} // namespace holdfast::db

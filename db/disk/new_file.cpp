// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/new_file.h"

#include <fcntl.h>
#include <stdio.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace holdfast::db {

namespace {

constexpr mode_t kOwnerOnly = 0600;
constexpr std::string_view kTemporary = ".holdfast-new-";
// What SQLite and the shop's lock write next to a shop file.
constexpr std::array<std::string_view, 4> kBesideAShop{".lock", "-wal", "-shm", "-journal"};

bool isNameOfOurs(const std::string& name) {
    return name.find(kTemporary) != std::string::npos ||
           std::ranges::any_of(kBesideAShop, [&](std::string_view end) { return name.ends_with(end); });
}

Error isOurs(const std::filesystem::path& path) {
    return plainError(said("Holdfast itself writes and removes files named like {path}. Choose another name.",
                           {{"path", path.filename().string()}}));
}

Error taken(const std::filesystem::path& path) {
    return plainError(
        said("There is a file {path} already. Choose another name.", {{"path", path.string()}}));
}

Error cannotWrite(const std::filesystem::path& path, int reason) {
    const std::string folder = path.parent_path().string();
    switch (reason) {
    case ENOENT:
    case ENOTDIR:
        return plainError(said("There is no folder {folder}.", {{"folder", folder}}));
    case ENOSPC:
    case EDQUOT:
        return plainError(
            said("The disk is full: there is no room in the folder {folder}.", {{"folder", folder}}));
    case ENAMETOOLONG:
        return plainError(said("The file name is too long."));
    case EIO:
        return plainError(said("The disk of the folder {folder} did not take what was written. Look at the "
                               "disk, or choose another one.",
                               {{"folder", folder}}));
    default:
        return plainError(
            said("The folder {folder} cannot be written to. Choose another one.", {{"folder", folder}}));
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

// "shop.holdfast.holdfast-new-77" in "shop.holdfast.holdfast-new-77-wal"; nothing in a name that is none of
// ours.
std::string temporaryIn(const std::string& name) {
    const std::size_t at = name.rfind(kTemporary);
    if (at == std::string::npos || at == 0)
        return {};
    const std::size_t number = at + kTemporary.size();
    const std::size_t end = std::min(name.find_first_not_of("0123456789", number), name.size());
    const std::string_view rest = std::string_view{name}.substr(end);
    const bool isOursBeside = rest.empty() || std::ranges::find(kBesideAShop, rest) != kBesideAShop.end();
    return end > number && isOursBeside ? name.substr(0, end) : std::string{};
}

} // namespace

NewFile::NewFile(std::filesystem::path path, bool replaces)
    : m_path(std::move(path))
    , m_temporary(m_path)
    , m_replaces(replaces) {
    m_temporary += std::string{kTemporary} + std::to_string(::getpid());
}

NewFile::NewFile(NewFile&& other) noexcept
    : m_path(std::move(other.m_path))
    , m_temporary(std::exchange(other.m_temporary, {}))
    , m_replaces(other.m_replaces)
    , m_file(std::exchange(other.m_file, -1)) {}

Result<NewFile> NewFile::begin(const std::filesystem::path& path) {
    struct stat found{};
    if (!isNameOfOurs(path.filename().string()) && lstat(path.c_str(), &found) == 0)
        return taken(path);
    return begun(path, false);
}

Result<NewFile> NewFile::beginOver(const std::filesystem::path& path) {
    struct stat found{};
    if (lstat(path.c_str(), &found) == 0 && !S_ISREG(found.st_mode))
        return plainError(
            S_ISLNK(found.st_mode)
                ? said("{path} is a link to another file. Choose another name.", {{"path", path.string()}})
                : said("{path} is not a file that can be written over. Choose another name.",
                       {{"path", path.string()}}));
    return begun(path, true);
}

Result<NewFile> NewFile::begun(const std::filesystem::path& path, bool replaces) {
    if (isNameOfOurs(path.filename().string()))
        return isOurs(path);
    NewFile file{std::filesystem::absolute(path), replaces};
    removeLeftOver(file.m_path.parent_path());
    removeWithWhatIsBeside(file.m_temporary); // on a disk without locks, of a program of the same number
    file.m_file = ::open(file.m_temporary.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, kOwnerOnly);
    if (file.m_file < 0) {
        const int reason = errno;
        file.m_temporary.clear();
        return cannotWrite(file.m_path, reason);
    }
    (void)::flock(file.m_file, LOCK_EX | LOCK_NB); // a disk without locks keeps what is left over
    if (::fchmod(file.m_file, kOwnerOnly) != 0)
        return cannotWrite(file.m_path, EPERM);
    return file;
}

NewFile::~NewFile() {
    if (!m_temporary.empty())
        removeWithWhatIsBeside(m_temporary);
    if (m_file >= 0)
        ::close(m_file);
}

void removeWithWhatIsBeside(const std::filesystem::path& path) {
    ::unlink(path.c_str());
    for (const std::string_view part : kBesideAShop) {
        std::filesystem::path left = path;
        left += part;
        ::unlink(left.c_str());
    }
}

void removeLeftOver(const std::filesystem::path& folder) {
    std::set<std::filesystem::path> temporaries;
    std::error_code error;
    for (const auto& entry : std::filesystem::directory_iterator(folder, error))
        if (const std::string name = temporaryIn(entry.path().filename().string()); !name.empty())
            temporaries.insert(folder / name);
    for (const auto& temporary : temporaries) {
        const int opened = ::open(temporary.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW);
        const bool isGone = opened < 0 && errno == ENOENT; // and what was next to it is left
        if (isGone || (opened >= 0 && ::flock(opened, LOCK_EX | LOCK_NB) == 0))
            removeWithWhatIsBeside(temporary);
        if (opened >= 0)
            ::close(opened);
    }
}

Result<Done> NewFile::write(std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(m_file, bytes.data(), bytes.size());
        if (written < 0 && errno != EINTR)
            return cannotWrite(m_path, errno);
        bytes.remove_prefix(static_cast<std::size_t>(std::max<ssize_t>(0, written)));
    }
    return Done{};
}

Result<Done> NewFile::reachDisk() {
    return ::fsync(m_file) == 0 ? Result<Done>{Done{}} : Result<Done>{cannotWrite(m_path, errno)};
}

Result<Done> NewFile::keepAs(const std::filesystem::path& path) {
    m_path = std::filesystem::absolute(path);
    return keep();
}

Result<Done> NewFile::keep() {
    if (auto written = reachDisk(); !written)
        return written;
    if (auto named = giveName(); !named)
        return named;
    syncFolder(m_path.parent_path());
    return Done{};
}

Result<Done> NewFile::keepAll(std::span<NewFile> files) {
    for (NewFile& file : files)
        if (auto written = file.reachDisk(); !written)
            return written;
    for (std::size_t at = 0; at < files.size(); ++at)
        if (auto named = files[at].giveName(); !named)
            return withoutThose(files.first(at), named.error());
    if (!files.empty())
        syncFolder(files.front().m_path.parent_path());
    return Done{};
}

// Takes away what was given its name before another could not be.
Error NewFile::withoutThose(std::span<const NewFile> files, Error why) {
    for (const NewFile& file : files)
        if (::unlink(file.m_path.c_str()) != 0) {
            why.message = oneAfterTheOther(
                why.message,
                said("Some of the files are in {folder} all the same; remove them before you try again.",
                     {{"folder", file.m_path.parent_path().string()}}));
            break;
        }
    return why;
}

Result<Done> NewFile::giveName() {
    int outcome =
        m_replaces ? ::rename(m_temporary.c_str(), m_path.c_str())
                   : ::renameat2(AT_FDCWD, m_temporary.c_str(), AT_FDCWD, m_path.c_str(), RENAME_NOREPLACE);
    if (!m_replaces && outcome != 0 && (errno == EINVAL || errno == ENOSYS)) {
        // A disk that cannot rename without replacing.
        struct stat found{};
        if (lstat(m_path.c_str(), &found) == 0)
            return taken(m_path);
        outcome = ::rename(m_temporary.c_str(), m_path.c_str());
    }
    if (outcome != 0)
        return errno == EEXIST ? taken(m_path) : cannotWrite(m_path, errno);
    return named();
}

Result<Done> NewFile::replace(const std::filesystem::path& old) {
    if (auto written = reachDisk(); !written)
        return written;
    if (::rename(m_temporary.c_str(), old.c_str()) != 0)
        return cannotWrite(old, errno);
    syncFolder(old.parent_path());
    return named();
}

Result<Done> NewFile::named() {
    m_temporary.clear();
    ::close(std::exchange(m_file, -1)); // before anybody opens it: closing lets go of SQLite's locks
    return Done{};
}

} // namespace holdfast::db

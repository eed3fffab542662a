// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/file_probe.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdint>
#include <string_view>

namespace holdfast::db {

namespace {

// The header of an SQLite file: https://www.sqlite.org/fileformat.html, section 1.3.
constexpr std::size_t kHeaderSize = 100;
constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;

using Header = std::array<unsigned char, kHeaderSize>;

std::int32_t bigEndianAt(const Header& header, std::size_t place) {
    std::uint32_t number = 0;
    for (std::size_t byte = 0; byte < 4; ++byte)
        number = (number << 8) | header[place + byte];
    return static_cast<std::int32_t>(number);
}

Error unreadable(const std::filesystem::path& path) {
    return plainError(said("You may not read {path}. Ask whoever owns the file.", {{"path", path.string()}}));
}

} // namespace

Error notAShop(const std::filesystem::path& path) {
    return plainError(said("{path} is not a shop file. It was left as it is.", {{"path", path.string()}}));
}

Error fromNewerVersion(const std::filesystem::path& path) {
    return plainError(said("{path} was written by a newer version of Holdfast. Open it with that version. "
                           "The file was left as it is.",
                           {{"path", path.string()}}));
}

Error damagedShop(const std::filesystem::path& path) {
    return plainError(
        said("The shop file {path} is damaged. It is kept as it is: open a backup, or bring what can be read "
             "of it into a new file with holdfast --shop FILE save-what-can-be NEW.",
             {{"path", path.string()}}));
}

Result<Done> probeFile(const std::filesystem::path& path) {
    struct stat found{};
    if (stat(path.c_str(), &found) != 0) {
        if (errno == EACCES)
            return unreadable(path);
        return plainError(said("There is no file {path}.", {{"path", path.string()}}));
    }
    if (S_ISDIR(found.st_mode))
        return plainError(said("{path} is a folder, not a shop file.", {{"path", path.string()}}));
    if (!S_ISREG(found.st_mode))
        return notAShop(path);
    if (found.st_size == 0)
        return plainError(said("{path} is empty: it is not a shop file.", {{"path", path.string()}}));
    if (faccessat(AT_FDCWD, path.c_str(), R_OK, AT_EACCESS) != 0)
        return unreadable(path);
    return Done{};
}

bool isReadByOthers(const std::filesystem::path& path) {
    struct stat found{};
    return stat(path.c_str(), &found) == 0 && (found.st_mode & (S_IRWXG | S_IRWXO)) != 0;
}

Result<Done> probeHeader(const std::filesystem::path& path, int newestStep) {
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (file < 0)
        return unreadable(path);
    Header header{};
    const ssize_t length = ::pread(file, header.data(), header.size(), 0);
    ::close(file);
    if (length < 0)
        return plainError(
            said("The disk could not be read: {path} was left as it is.", {{"path", path.string()}}));
    const std::string_view start{reinterpret_cast<const char*>(header.data()), kMagic.size()};
    if (start != kMagic)
        return notAShop(path);
    if (static_cast<std::size_t>(length) < kHeaderSize)
        return damagedShop(path);
    if (bigEndianAt(header, kApplicationIdAt) != kShopApplicationId)
        return notAShop(path);
    if (bigEndianAt(header, kUserVersionAt) > newestStep)
        return fromNewerVersion(path);
    return Done{};
}

Result<Done> probeWritable(const std::filesystem::path& path) {
    if (faccessat(AT_FDCWD, path.c_str(), W_OK, AT_EACCESS) != 0)
        return plainError(
            said("The shop file {path} is read-only. Change who may write to it, or open a copy.",
                 {{"path", path.string()}}));
    if (faccessat(AT_FDCWD, path.parent_path().c_str(), W_OK, AT_EACCESS) != 0)
        return plainError(said("The folder {folder} is read-only. Holdfast has to write next to the shop "
                               "file; change who may write there or move the shop file.",
                               {{"folder", path.parent_path().string()}}));
    return Done{};
}

} // namespace holdfast::db

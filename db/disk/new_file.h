// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A file that appears under its name only when it is whole, and over another only where that is asked for.
//
// It is written under a temporary name in the same folder, readable by its owner only whatever the umask
// says. Unless keep() succeeds, nothing is left behind; what a program left that was killed in the midst of
// it is removed by the next one that writes to the folder or opens a shop in it.

#include "core/trade/result.h"

#include <filesystem>
#include <span>
#include <string_view>

namespace holdfast::db {

class NewFile {
public:
    // An error in words where the name is taken or one that Holdfast itself writes next to a shop, or the
    // folder is missing, read-only or full.
    static Result<NewFile> begin(const std::filesystem::path& path);
    // The same over a file of that name, which is there until the new one is whole. What is no file of its
    // own (a folder, a device, a link to somewhere else) is refused.
    static Result<NewFile> beginOver(const std::filesystem::path& path);

    NewFile(NewFile&& other) noexcept;
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;
    NewFile& operator=(NewFile&&) = delete;
    ~NewFile();

    const std::filesystem::path& temporaryPath() const { return m_temporary; }

    // Adds to its end.
    Result<Done> write(std::string_view bytes);
    // All that was written is on the disk, and not only in the system's memory; in words where it is not.
    Result<Done> reachDisk();
    // Gives it its name, on the disk.
    // REQUIRES: no connection to the temporary file is open.
    Result<Done> keep();
    // All of them or none.
    static Result<Done> keepAll(std::span<NewFile> files);
    // Under another name in the same folder than it was begun with.
    Result<Done> keepAs(const std::filesystem::path& path);
    // In the place of a file of the same folder, which is gone then. REQUIRES: nobody has that one open.
    Result<Done> replace(const std::filesystem::path& old);

private:
    NewFile(std::filesystem::path path, bool replaces);
    static Result<NewFile> begun(const std::filesystem::path& path, bool replaces);
    Result<Done> named(); // it has its name: nothing is temporary any more
    Result<Done> giveName();
    static Error withoutThose(std::span<const NewFile> files, Error why);

    std::filesystem::path m_path;
    std::filesystem::path m_temporary;
    bool m_replaces;
    int m_file =
        -1; // open and locked for as long as the file is temporary: it is being written, and not left over
};

// Removes a shop file with what SQLite and the shop's lock left next to it.
void removeWithWhatIsBeside(const std::filesystem::path& path);

// Removes the temporary files in the folder that nobody is writing any more.
void removeLeftOver(const std::filesystem::path& folder);

} // namespace holdfast::db

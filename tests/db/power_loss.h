// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Power that is lost at some call to the disk. What was synced is there afterwards. Of what was written
// since, chance decides, write by write: it is there, it is not, or only some of its sectors of 512 bytes
// are. Names that were given, changed or removed come in their order, up to some of them, unless their folder
// was synced.

#include "tests/db/disk_watch.h"

#include <cstddef>
#include <filesystem>
#include <map>
#include <random>
#include <string>
#include <vector>

namespace holdfast::db::testing {

// While it lives, it takes down what is done to the files of a folder.
class PowerLoss : public DiskWatch {
public:
    // At the so-many-th call the folder as it is on the disk is put into `after`, and this program is gone.
    PowerLoss(std::filesystem::path folder, std::filesystem::path after, long atCall, unsigned seed);
    PowerLoss(const PowerLoss&) = delete;
    PowerLoss& operator=(const PowerLoss&) = delete;
    ~PowerLoss() override;

    long counted() const { return m_calls; }
    // Now.
    [[noreturn]] void lose();

private:
    struct Change {
        std::uint64_t at = 0;
        std::string bytes;
        bool isCut = false; // else it was written
    };
    struct File {
        std::string onDisk;
        std::vector<Change> since;
    };
    // Of a name that is given, taken away, or both at once.
    struct NameChange {
        std::string gone;
        std::string given;
        std::size_t file = 0;
    };
    using Names = std::map<std::string, std::size_t>;

    void opened(int file, const char* path) override;
    void wrote(int file, std::uint64_t at, std::string_view bytes) override;
    void cut(int file, std::uint64_t length) override;
    void synced(int file) override;
    void removed(const char* path) override;
    void renamed(const char* from, const char* to) override;

    void called();
    bool isOurs(const std::string& name) const { return name.starts_with(m_folder.string() + "/"); }
    File* fileOf(int file);
    std::string afterwards(const File& file);
    void tear(std::string& content, const Change& change);

    const std::filesystem::path m_folder, m_after;
    const long m_atCall;
    std::mt19937 m_chance;
    long m_calls = 0;
    std::vector<File> m_files;
    std::map<std::uint64_t, std::size_t> m_byNumber; // inode
    Names m_onDisk, m_now;
    std::vector<NameChange> m_namesSince;
};

} // namespace holdfast::db::testing

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/backup_before_step.h"

#include "db/disk/backup_folders.h"
#include "db/disk/new_file.h"
#include "db/disk/whole_copy.h"

#include <algorithm>
#include <fstream>
#include <iterator>

namespace holdfast::db {

namespace {

bool holdTheSame(const std::filesystem::path& one, const std::filesystem::path& other) {
    std::error_code unknown;
    if (std::filesystem::file_size(one, unknown) != std::filesystem::file_size(other, unknown))
        return false;
    std::ifstream left{one, std::ios::binary};
    std::ifstream right{other, std::ios::binary};
    return left && right &&
           std::equal(std::istreambuf_iterator<char>{left}, {}, std::istreambuf_iterator<char>{right}, {});
}

} // namespace

Result<std::filesystem::path> backUpBeforeStep(Connection& connection, const std::filesystem::path& shop,
                                               LocalTime now) {
    const std::filesystem::path folder = backupFolder(shop);
    if (auto made = makeFolder(folder); !made)
        return made.error();
    if (auto room = requireRoom(folder, bytesOf(connection)); !room)
        return room.error();
    const auto name = freeBackupPath(folder, shop, now, BackupReason::BeforeStep, true);
    auto file = NewFile::begin(name);
    if (!file)
        return file.error();
    if (const auto copied = copyWhole(connection, file->temporaryPath(), {}); !copied)
        return copied.error();
    // One is enough where the program was ended before the first step.
    for (const KeptBackup& earlier : namedBackupsIn(folder, shop))
        if (earlier.reason == BackupReason::BeforeStep && holdTheSame(file->temporaryPath(), earlier.path))
            return earlier.path;
    if (auto kept = file->keep(); !kept)
        return kept.error();
    return name;
}

} // namespace holdfast::db

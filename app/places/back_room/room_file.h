// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the shop file says of itself: where it is, its copies, the laptops that share the shop; and what
// belongs to this computer alone.

#include "app/desk/backup_note.h"
#include "app/desk/backups_beside.h"
#include "app/desk/knock.h"
#include "app/desk/machine_settings.h"
#include "app/papers/paper_printing.h"
#include "core/trade/result.h"
#include "db/exchange/exchange.h"
#include "db/exchange/remarks.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <vector>

namespace holdfast::app {

struct OtherLaptop {
    db::Seat seat;
    std::int64_t entriesForIt = 0; // that it is not known to have
};

struct PrintersHere {
    PrinterChoice choice;
    std::optional<std::vector<PrintQueue>> queues; // none: not known yet
};

struct RoomFile {
    std::filesystem::path path; // empty: the shop has no file
    std::uintmax_t bytes = 0;
    bool isReadByOthers = false;          // on this computer, and it could not be put right
    std::optional<LastBackup> lastBackup; // by hand
    bool makesBackups = false;            // by itself
    std::optional<BackupsKnown> backups;  // none: not looked at yet
    std::optional<LocalDate> secondUpToDateOn;

    db::Seat here;
    bool isTheWorkshop = true;
    std::vector<OtherLaptop> others;
    std::int64_t entriesToBring = 0; // not at the workshop
    std::int64_t orderNumbersLeft = 0;
    std::vector<db::SetAside> setAside;
    std::vector<db::Remark> remarks;

    // Of this computer.
    PrintersHere printers;
    Loudness loudness = Loudness::Loud;
    QString scannerPrefix;
    int textPercent = kUsualTextSize;
};

// An error where the file cannot be read.
Result<RoomFile> readRoomFile(db::Shop& shop);

} // namespace holdfast::app

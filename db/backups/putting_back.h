// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A backup takes the place of the shop. What takes long is done first, while the shop may still be open; the
// putting in place is a matter of moments, in which the present file is kept as a backup and nothing of it is
// lost: putting that one back undoes it.

#include "core/trade/result.h"
#include "db/check/check.h"
#include "db/disk/kept_backup.h"
#include "db/disk/new_file.h"
#include "db/journal/shop.h"

#include <cstdint>
#include <filesystem>

namespace holdfast::db {

class PreparedBackup {
public:
    // A copy of the backup next to the shop, brought up to date and read as the program reads it. It is
    // another incarnation than the backup and the shop, and its next order has a number that the shop has
    // given to none. An error where the backup cannot be read, or there is no room.
    static Result<PreparedBackup> prepare(const std::filesystem::path& backup,
                                          const std::filesystem::path& shop, const Clock& clock,
                                          const TellCheck& tell = {}, Shop::Steps steps = schemaSteps());

    // The present file is kept as a backup of this moment. A shop file that is not there at all is no reason
    // against it: then the path of what is returned is empty. On an error nothing was changed.
    // REQUIRES: this program has the shop open no more.
    Result<KeptBackup> putInPlace(LocalTime now);

    const std::filesystem::path& shop() const { return m_shop; }
    const std::filesystem::path& backup() const { return m_backup; }
    bool isWhole() const { return m_found.isWhole(); } // nothing was found wrong in it

private:
    PreparedBackup(NewFile file, std::filesystem::path backup, std::filesystem::path shop);

    NewFile m_file;
    std::filesystem::path m_backup;
    std::filesystem::path m_shop;
    QuickFindings m_found;
    bool m_isPresentWhole = false;
    int m_newestStep = 0;
};

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// Backups that are made by themselves: the second folder is chosen, and one is put back.
#include "app/desk/background_work.h"
#include "app/desk/backups_beside.h"
#include "app/desk/formats.h"
#include "app/shell/backup_folder_slip.h"
#include "app/shell/foot_line.h"
#include "app/shell/putting_back_slip.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "db/backups/putting_back.h"

namespace holdfast::app {

void Workshop::openBackupFolderSlip() {
    if (m_desk.file().path().empty())
        return m_foot->showFailure(tr("This shop has no file yet."));
    openSlip(new BackupFolderSlip(m_desk, m_slips), [this] { openBackupFolderSlip(); });
}

// Read, copied and checked while the shop goes on; the window puts it in place.
void Workshop::openPuttingBackSlip(const std::filesystem::path& backup) {
    if (m_desk.file().path().empty() || m_desk.file().isReadOnly())
        return m_foot->showFailure(tr("This shop has no file that can be written to."));
    auto* slip = new PuttingBackSlip(m_desk, backup, m_slips);
    connect(slip, &PuttingBackSlip::puttingBackAsked, this, [this, slip](const std::filesystem::path& from) {
        const bool began =
            beginWork(tr("Reading the backup"),
                      [this, from, shop = m_desk.file().path(), clock = m_desk.clock().now](
                          const BackgroundWork::Progress& progress) -> BackgroundWork::Outcome {
                          auto prepared = db::PreparedBackup::prepare(
                              from, shop, clock, [&](double share, Phrase) { return progress(share); });
                          if (!prepared.ok())
                              return prepared.error();
                          auto ready = std::make_shared<db::PreparedBackup>(std::move(prepared).value());
                          return {plain(tr("Putting the backup back")),
                                  [this, ready] { emit puttingBackReady(ready); }};
                      });
        if (began)
            slip->waitForWork();
    });
    openWorkSlip(slip, [this, backup] { openPuttingBackSlip(backup); });
}

} // namespace holdfast::app

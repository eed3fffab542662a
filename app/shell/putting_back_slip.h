// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Puts a backup back: which one, what would be lost and what would come back, read before anything is done,
// and one action that says what it does.

#include "app/desk/backups_beside.h"
#include "app/slips/form_slip.h"
#include "db/backups/look_at_backup.h"

#include <filesystem>
#include <memory>
#include <optional>

namespace holdfast::app {

class Banner;

class PuttingBackSlip : public FormSlip {
    Q_OBJECT

public:
    // The backup that is chosen at first; an empty path: the newest that is whole.
    PuttingBackSlip(ShopDesk& desk, const std::filesystem::path& backup, QWidget* parent = nullptr);

signals:
    void puttingBackAsked(const std::filesystem::path& backup);

protected:
    void act() override;

private:
    void fillList();
    const BackupShown* chosen() const;
    void look();
    void endLook(const QString& refusal);

    std::filesystem::path m_wanted;
    std::vector<BackupShown> m_backups; // as listed
    BackgroundWork m_looking;
    std::filesystem::path m_lookedAt;
    std::shared_ptr<std::optional<db::LookAtBackup>> m_look;
    bool m_isSeen = false; // what the chosen one would take away is shown
    Banner* m_lost = nullptr;
    Banner* m_comesBack = nullptr;
};

// "2 orders, 3 payments, in all 9 things done"
QString onlyInOneWords(const db::OnlyInOne& only);
// "The newest: Took order 431; and 8 more."
QString onlyInOneNewest(const db::OnlyInOne& only);

} // namespace holdfast::app

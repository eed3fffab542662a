// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// On the page that asks which shop to open: backups of a shop whose file cannot be read, or is gone, with the
// one action that puts one back.

#include "app/desk/background_work.h"
#include "app/desk/clock.h"
#include "db/backups/putting_back.h"
#include "db/disk/kept_backup.h"

#include <QWidget>

#include <filesystem>
#include <memory>
#include <vector>

namespace holdfast::app {

class Banner;
class Button;
class Label;
class PickList;

class StartBackups : public QWidget {
    Q_OBJECT

public:
    explicit StartBackups(Clock clock, QWidget* parent = nullptr);

    // Shown only where there are backups and the shop itself cannot be read.
    void offer(const std::filesystem::path& shop);

signals:
    void putBack(const std::filesystem::path& shop); // it can be opened now

private:
    void look();
    void begin();
    void end(const QString& refusal);

    Clock m_clock;
    std::filesystem::path m_shop;
    std::vector<db::KeptBackup> m_backups;
    std::shared_ptr<std::unique_ptr<db::PreparedBackup>> m_prepared;
    BackgroundWork m_work;
    Label* m_about = nullptr;
    PickList* m_list = nullptr;
    Banner* m_contents = nullptr;
    Button* m_action = nullptr;
};

} // namespace holdfast::app

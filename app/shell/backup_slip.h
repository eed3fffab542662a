// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where the copy of the shop goes. Its action begins the copying; the foot line shows how far it is.

#include "app/slips/form_slip.h"

#include <filesystem>

namespace holdfast::app {

class BackupSlip : public FormSlip {
    Q_OBJECT

public:
    explicit BackupSlip(ShopDesk& desk, QWidget* parent = nullptr);

signals:
    void backupAsked(const std::filesystem::path& target);

protected:
    void act() override;
};

} // namespace holdfast::app

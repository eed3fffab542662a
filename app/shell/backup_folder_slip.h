// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where backups go a second time: a folder on another disk, such as a stick.

#include "app/slips/form_slip.h"

namespace holdfast::app {

class BackupFolderSlip : public FormSlip {
    Q_OBJECT

public:
    explicit BackupFolderSlip(ShopDesk& desk, QWidget* parent = nullptr);

protected:
    void act() override;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where the calendar of due days goes, and whether names are in it. Its action begins the writing.

#include "app/slips/form_slip.h"
#include "core/orders/due_days.h"

#include <filesystem>

namespace holdfast::app {

class DueDaysSlip : public FormSlip {
    Q_OBJECT

public:
    explicit DueDaysSlip(ShopDesk& desk, QWidget* parent = nullptr);

signals:
    void calendarAsked(const std::filesystem::path& target, holdfast::Names names);

protected:
    void act() override;
};

} // namespace holdfast::app

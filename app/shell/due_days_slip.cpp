// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/due_days_slip.h"

#include "app/shell/file_target.h"

namespace holdfast::app {

DueDaysSlip::DueDaysSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Save the due days"),
               tr("The promised day of each open order in a file that any calendar can open (iCalendar)."),
               parent) {
    askForNewFile(form(), tr("Into the new file"),
                  usualNewFile(shopDesk, QStringLiteral("due-days"), QStringLiteral("ics")),
                  tr("Where it goes"));
    form().turn("names", tr("With the customers’ names"), true);
    form().note(tr("Whoever sees the calendar can read the names."));
    beginAt("path");
    setAction(tr("Save the due days"));
}

void DueDaysSlip::act() {
    if (desk().file().path().empty())
        return form().setError("path", tr("This shop has no file yet, so it has no due days."));
    const std::filesystem::path target = newFileIn(form());
    if (target.empty())
        return;
    emit calendarAsked(target, form().isOn("names") ? Names::Shown : Names::LeftOut);
}

} // namespace holdfast::app

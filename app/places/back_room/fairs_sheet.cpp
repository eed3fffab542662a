// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/formats.h"
#include "app/places/back_room/retired_lines.h"
#include "app/places/back_room/tools_sheets.h"
#include "core/facts/fair.h"

#include <QCoreApplication>

#include <algorithm>
#include <functional>
#include <vector>

namespace holdfast::app {

namespace {

class FairWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    static QString days(const Fair& fair) {
        return fair.days() == 1 ? tr("%1 %2").arg(day(fair.firstDay)).arg(yearOf(fair.firstDay))
                                : tr("%1 to %2").arg(day(fair.firstDay), date(fair.lastDay));
    }

    static void add(RoomSheet& sheet, const ReckonedShop& shop, const Fair& fair) {
        const Currency& currency = shop.facts.settings.currency;
        const LocalDate today = shop.now.today();
        SlipTarget matter;
        matter.fair = fair.id;
        RoomLine line;
        line.name = words(fair.name);
        line.text = tr("%1, %2 to %3\nStall %4, other costs %5")
                        .arg(days(fair), clock(LocalTime{LocalDate{}} + fair.hours.opens),
                             clock(LocalTime{LocalDate{}} + fair.hours.closes),
                             money(fair.stallCost, currency), money(fair.otherCosts, currency));
        if (!fair.note.empty())
            line.text += QLatin1Char('\n') + words(fair.note);
        if (fair.isOn(today)) {
            line.tone = Tone::Working;
            line.stateIcon = QStringLiteral("fair-table");
            line.state = tr("today");
        }
        line.offer = tr("Change fair");
        line.deed = OpenSlip{SlipName::ChangeFair, matter};
        sheet.lines.append(line);
    }

private:
    static int yearOf(LocalDate date) { return static_cast<int>(std::chrono::year_month_day{date}.year()); }
};

} // namespace

RoomSheet fairsSheet(const ReckonedShop& shop) {
    RoomSheet sheet;
    sheet.title = FairWords::tr("Fairs");
    const LocalDate today = shop.now.today();
    std::vector<const Fair*> coming;
    std::vector<const Fair*> over;
    for (const Fair& fair : shop.facts.fairs)
        (fair.isOver(today) ? over : coming).push_back(&fair);
    std::ranges::sort(coming, {}, &Fair::firstDay);
    std::ranges::sort(over, std::ranges::greater{}, &Fair::firstDay);
    if (!coming.empty())
        addHeading(sheet, FairWords::tr("To come"));
    for (const Fair* fair : coming)
        FairWords::add(sheet, shop, *fair);
    if (!over.empty())
        addHeading(sheet, FairWords::tr("Over"));
    for (const Fair* fair : over)
        FairWords::add(sheet, shop, *fair);
    sheet.summary = !coming.empty() ? FairWords::tr("next: %1").arg(dayNear(coming.front()->firstDay, today))
                    : over.empty()  ? FairWords::tr("none yet")
                                    : FairWords::tr("none to come");
    sheet.intro = sheet.lines.isEmpty()
                      ? FairWords::tr("Fairs are listed here with their days, hours and costs, so that "
                                      "Figures can say what each earned and what to bring next.")
                      : FairWords::tr("See Figures for what each earned and what to bring next.");
    sheet.acts.append({FairWords::tr("Add a fair"), QStringLiteral("plus"), QKeySequence(Qt::Key_A),
                       OpenSlip{SlipName::AddFair, SlipTarget{}}});
    return sheet;
}

} // namespace holdfast::app

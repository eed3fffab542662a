// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/walk_tools.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"
#include "app/widgets/progress_beads.h"

namespace holdfast::app {

WalkTools::WalkTools(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("walkTools"));
    auto* sheet = new Button(tr("Day sheet"), Button::Kind::Quiet);
    sheet->setObjectName(QStringLiteral("printDaySheet"));
    sheet->setToolTip(tr("Print the walk of the day"));
    sheet->showKey(QKeySequence(Qt::Key_D));
    connect(sheet, &Button::clicked, this, &WalkTools::daySheetAsked);
    m_beads = new ProgressBeads;
    m_beads->setObjectName(QStringLiteral("walkBeads"));
    m_beads->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed); // words alone where the room is short
    m_ends = new Label({}, Type::Body, &Tokens::ink2);
    m_ends->setTextFormat(Qt::RichText);
    m_clock = new Label({}, Type::Number);
    auto* row = new FlowLayout(this, kSpace16);
    for (QWidget* each : {static_cast<QWidget*>(sheet), static_cast<QWidget*>(m_beads),
                          static_cast<QWidget*>(m_ends), static_cast<QWidget*>(m_clock)})
        row->addWidget(each);
}

void WalkTools::show(const Walk& walk, const Now& now) {
    const auto pressed = static_cast<int>(walk.pressed);
    const auto total = static_cast<int>(walk.total);
    m_beads->setVisible(total > 0);
    m_beads->set(pressed, total, tr("%1 of %2 pressed").arg(pressed).arg(total));
    QString ends;
    if (pressed < total) {
        const LocalTime at = now.toLocal(walk.ends);
        ends = dateOf(at) == now.today() ? clock(at) : tr("%1 %2").arg(day(dateOf(at)), clock(at));
        m_ends->setText(tr("ends about <b>%1</b>").arg(ends));
    }
    m_ends->setVisible(!ends.isEmpty());
    setAccessibleName(ends.isEmpty() ? QString() : tr("ends about %1").arg(ends));
}

void WalkTools::setClock(const QString& time) {
    m_clock->setText(time);
}

} // namespace holdfast::app

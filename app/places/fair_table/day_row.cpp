// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/day_row.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_measures.h"
#include "app/widgets/field.h"

#include <QHBoxLayout>
#include <QLineEdit>

namespace holdfast::app {

namespace {

constexpr int kLongestDay = 40;

} // namespace

DayRow::DayRow(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_day(new Field(tr("Wanted on"))) {
    m_day->setObjectName(QStringLiteral("wantedOn"));
    m_day->showKey(Qt::Key_U);
    m_day->setPlaceholder(tr("fri, tomorrow, 4 dec"));
    m_day->editor()->setMaxLength(kLongestDay);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_day);
    connect(m_day, &Field::edited, this, &DayRow::read);
    connect(m_day, &Field::finished, this, [this] {
        m_model.endStep();
        if (!m_model.draft().wantedOn)
            m_day->setText({});
        m_day->setError({});
        emit left();
    });
}

// While a day is half typed none is asked for; what is wrong is said once it cannot become a day.
void DayRow::read(const QString& text) {
    std::optional<LocalDate> wanted;
    const LocalDate today = m_model.shop().now.today();
    if (const auto day = readComingDay(text, {}, today); day.ok() && *day >= today)
        wanted = *day;
    const bool isPast = !wanted && readComingDay(text, {}, today).ok();
    m_day->setError(isPast ? tr("That day is past.") : QString());
    m_model.edit(Step::Day, [&](TableDraft& draft) {
        draft.wantedOn = wanted;
        draft.isRushOff = false;
    });
}

void DayRow::open() {
    show();
    m_day->editor()->setFocus(Qt::ShortcutFocusReason);
    m_day->selectAll();
}

bool DayRow::isOpen() const {
    return m_model.draft().wantedOn || m_day->editor()->hasFocus();
}

void DayRow::refresh() {
    if (m_day->editor()->hasFocus())
        return;
    const auto& wanted = m_model.draft().wantedOn;
    m_day->setText(wanted ? day(*wanted) : QString());
}

} // namespace holdfast::app

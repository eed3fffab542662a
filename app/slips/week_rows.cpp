// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/week_rows.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/theme/measures.h"
#include "app/widgets/field.h"
#include "app/widgets/switch.h"

#include <QGridLayout>
#include <QLineEdit>
#include <QRegularExpression>

namespace holdfast::app {

namespace {

constexpr int kTimeWidth = 72;

// Of Monday first, in days of a week that begins on Sunday.
std::size_t sundayFirst(int row) {
    return static_cast<std::size_t>((row + 1) % 7);
}

QString timeWords(Minutes time) {
    return time == Hours{24} ? QStringLiteral("24:00") : clock(LocalTime{} + time);
}

} // namespace

WeekRows::WeekRows(const Week& week, QWidget* parent)
    : QWidget(parent) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(kSpace8);
    grid->setColumnStretch(0, 1);
    for (int row = 0; row < 7; ++row)
        addRow(grid, row, week[sundayFirst(row)]);
}

void WeekRows::addRow(QGridLayout* grid, int row, const std::optional<OpeningHours>& hours) {
    const QString names[] = {tr("Monday"), tr("Tuesday"),  tr("Wednesday"), tr("Thursday"),
                             tr("Friday"), tr("Saturday"), tr("Sunday")};
    const QString& day = names[row];
    const OpeningHours shown = hours.value_or(OpeningHours{});
    auto* isOpen = new Switch(tr("%1: open").arg(day));
    isOpen->setText(day);
    isOpen->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    isOpen->setObjectName(QStringLiteral("open-%1").arg(row));
    isOpen->setChecked(hours.has_value());
    const auto field = [&](const QString& name, const char* objectName, Minutes time) {
        auto* made = new Field;
        made->setObjectName(QStringLiteral("%1-%2").arg(QString::fromLatin1(objectName)).arg(row));
        made->editor()->setObjectName(made->objectName() + QStringLiteral("Editor"));
        made->editor()->setAccessibleName(name);
        made->setText(timeWords(time));
        made->setFixedWidth(kTimeWidth);
        made->setEnabled(hours.has_value());
        connect(made, &Field::edited, this, [this, made] {
            made->setError({});
            emit changed();
        });
        return made;
    };
    m_rows[static_cast<std::size_t>(row)] = {isOpen, field(tr("%1: opens").arg(day), "opens", shown.opens),
                                             field(tr("%1: closes").arg(day), "closes", shown.closes)};
    const Row& made = m_rows[static_cast<std::size_t>(row)];
    grid->addWidget(isOpen, row, 0);
    grid->addWidget(made.opens, row, 1);
    grid->addWidget(made.closes, row, 2);
    connect(isOpen, &QCheckBox::toggled, this, [this, made](bool isOn) {
        made.opens->setEnabled(isOn);
        made.closes->setEnabled(isOn);
        emit changed();
    });
}

WeekRows::Week WeekRows::read() {
    m_isSound = true;
    Week week;
    for (int row = 0; row < 7; ++row) {
        const Row& made = m_rows[static_cast<std::size_t>(row)];
        if (!made.isOpen->isChecked())
            continue;
        const auto time = [&](Field* field) {
            const auto typed = readClock(field->text(), {});
            field->setError(typed.ok() ? QString() : tr("a time such as 15:00"));
            m_isSound = m_isSound && typed.ok();
            return typed.ok() ? *typed : Minutes{0};
        };
        OpeningHours hours;
        hours.opens = time(made.opens);
        hours.closes = time(made.closes);
        week[sundayFirst(row)] = hours;
    }
    return week;
}

Result<std::pair<LocalDate, OpeningHours>> readHoursOfDay(const QString& text, const QString& field,
                                                          LocalDate today) {
    static const QRegularExpression dayAndHours(
        QStringLiteral(R"(^(.+?)\s+(\d{1,2}(?:[:.hH]?\d{2})?)\s*[-–]\s*(\d{1,2}(?:[:.hH]?\d{2})?)$)"));
    const auto match = dayAndHours.match(text.trimmed());
    if (!match.hasMatch())
        return fieldError(
            plain(field),
            inWindow(WeekRows::tr("%1: a day and its hours such as 3/12 9:00–18:00.").arg(field)));
    const auto day = readDate(match.captured(1), field, today);
    if (!day.ok())
        return day.error();
    const auto opens = readClock(match.captured(2), field);
    const auto closes = readClock(match.captured(3), field);
    if (!opens.ok())
        return opens.error();
    if (!closes.ok())
        return closes.error();
    return std::pair{*day, OpeningHours{*opens, *closes}};
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/platen_spots.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"

#include <QGridLayout>
#include <QLineEdit>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr double kLowest = -20; // °C
constexpr double kHighest = 300;

} // namespace

PlatenSpots::PlatenSpots(QWidget* parent)
    : QWidget(parent) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(kSpace8);
    const auto side = [&](const QString& words, int row) {
        auto* label = new Label(words, Type::Small, &Tokens::ink2);
        label->setAlignment(Qt::AlignHCenter);
        grid->addWidget(label, row, 0, 1, kAcross);
    };
    side(tr("the far edge"), 0);
    const QString rows[] = {tr("far"), tr("middle"), tr("near")};
    const QString columns[] = {tr("left"), tr("centre"), tr("right")};
    for (int at = 0; at < kSpots; ++at) {
        auto* field = new Field;
        field->setObjectName(QStringLiteral("spot-%1").arg(at));
        field->editor()->setObjectName(QStringLiteral("spot-%1Editor").arg(at));
        field->editor()->setAccessibleName(
            tr("Reading %1 %2 in °C").arg(rows[at / kAcross], columns[at % kAcross]));
        field->setSuffix(QStringLiteral("°"));
        field->setRightAligned(true);
        grid->addWidget(field, 1 + at / kAcross, at % kAcross);
        connect(field, &Field::edited, this, [this, field] {
            field->setError({});
            emit changed();
        });
        m_fields[static_cast<std::size_t>(at)] = field;
    }
    side(tr("where you stand"), kAcross + 1);
}

std::vector<Celsius> PlatenSpots::read() {
    m_isSound = true;
    std::vector<Celsius> readings;
    for (Field* field : m_fields) {
        field->setError({});
        if (field->text().trimmed().isEmpty())
            continue;
        const auto number = readNumber(field->text(), tr("Reading"), kLowest, kHighest);
        if (number.ok()) {
            readings.push_back(Celsius{*number});
        } else {
            m_isSound = false;
            field->setError(tr("%1 to %2").arg(kLowest).arg(kHighest));
        }
    }
    return readings;
}

std::vector<Celsius> PlatenSpots::readings() const {
    std::vector<Celsius> readings;
    for (const Field* field : m_fields)
        if (const auto number = readNumber(field->text(), {}, kLowest, kHighest); number.ok())
            readings.push_back(Celsius{*number});
    return readings;
}

bool PlatenSpots::isFilled() const {
    return std::ranges::none_of(m_fields,
                                [](const Field* field) { return field->text().trimmed().isEmpty(); });
}

} // namespace holdfast::app

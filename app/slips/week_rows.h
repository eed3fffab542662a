// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The hours of a week, Monday first: each day open from one time to another, or closed.

#include "core/facts/settings.h"

#include <QWidget>

#include <array>
#include <utility>

class QGridLayout;

namespace holdfast::app {

class Field;
class Switch;

class WeekRows : public QWidget {
    Q_OBJECT

public:
    using Week = std::array<std::optional<OpeningHours>, 7>; // Sunday first, as in the settings

    explicit WeekRows(const Week& week, QWidget* parent = nullptr);

    // Marks what is no time.
    Week read();
    bool isSound() const { return m_isSound; } // of the last read()

signals:
    void changed();

private:
    struct Row {
        Switch* isOpen;
        Field* opens;
        Field* closes;
    };

    void addRow(QGridLayout* grid, int row, const std::optional<OpeningHours>& hours);

    std::array<Row, 7> m_rows{}; // Monday first
    bool m_isSound = true;
};

// A day and its hours as people type them: "3/12 9:00–18:00", "3 Dec 9-18".
Result<std::pair<LocalDate, OpeningHours>> readHoursOfDay(const QString& text, const QString& field,
                                                          LocalDate today);

} // namespace holdfast::app

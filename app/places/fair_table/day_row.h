// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day that the customer asks for, typed on the bill. It is there while it is typed, and where a day was
// asked for; whether it can be kept is said with the promise.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

namespace holdfast::app {

class Field;

class DayRow : public QWidget {
    Q_OBJECT

public:
    explicit DayRow(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void open(); // with the keyboard in it
    bool isOpen() const;

signals:
    void left(); // by the keyboard

private:
    void read(const QString& text);

    FairTableModel& m_model;
    Field* m_day = nullptr;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is to be remembered of the order: one line on the bill, seen again in the order book and at the
// hand-over. It is there while it is typed, and where there is anything in it.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

namespace holdfast::app {

class Field;

class NoteRow : public QWidget {
    Q_OBJECT

public:
    explicit NoteRow(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void open();         // with the keyboard in it
    bool isOpen() const; // something is in it, or it has the keyboard

signals:
    void left(); // by the keyboard

private:
    FairTableModel& m_model;
    Field* m_note = nullptr;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Who the order is for: name and number, with the shop's customers below as they are typed. Enter on a number
// that only one of them has takes that one.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

namespace holdfast::app {

class CustomerList;
class Field;

class CustomerRow : public QWidget {
    Q_OBJECT

public:
    explicit CustomerRow(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(Section section);
    // Marks the field; the words are said elsewhere.
    void setError(Section section, const QString& words);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void search(const QString& text, Field* below);
    void placeList();
    bool takeListKey(QKeyEvent* event);
    bool isNumberAlone() const;

    FairTableModel& m_model;
    Field* m_name = nullptr;
    Field* m_phone = nullptr;
    CustomerList* m_list = nullptr; // a child of the place, so that it may lie over what is below
    Field* m_listBelow = nullptr;
};

} // namespace holdfast::app

#pragma once
// Who the order is for: name and number, with the shop's customers below as they are typed.

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
    void setError(Section section, const QString& words);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void search(const QString& text, Field* below);
    void placeList();

    FairTableModel& m_model;
    Field* m_name = nullptr;
    Field* m_phone = nullptr;
    CustomerList* m_list = nullptr; // a child of the place, so that it may lie over what is below
    Field* m_listBelow = nullptr;
};

} // namespace holdfast::app

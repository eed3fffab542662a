#pragma once
// What the customer puts down now: none, ten, half or the shop's share, all, or an amount typed; in cash or
// by card.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

namespace holdfast::app {

class Choice;
class Field;
class Label;

class DepositRow : public QWidget {
    Q_OBJECT

public:
    explicit DepositRow(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(); // where an amount is typed

private:
    void refreshChoices();

    FairTableModel& m_model;
    Choice* m_choices = nullptr;
    Field* m_typed = nullptr;
    Choice* m_how = nullptr;
    Label* m_error = nullptr;
};

} // namespace holdfast::app

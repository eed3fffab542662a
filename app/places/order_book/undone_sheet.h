// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An order that was undone: what it was, what happened, and the one act that puts it back.

#include "app/desk/shop_desk.h"
#include "db/tables/undone_orders.h"

#include <QWidget>

namespace holdfast::app {

class Button;
class FactBlock;
class HistoryLines;
class Label;

class UndoneSheet : public QWidget {
    Q_OBJECT

public:
    explicit UndoneSheet(ShopDesk& desk, QWidget* parent = nullptr);

    // False where no such order was undone.
    bool show(OrderId order);
    void takeKeyboard();

private:
    QWidget* makeHeader();
    void fill(const db::UndoneOrder& order);
    void putBack();

    ShopDesk& m_desk;
    OrderId m_order;
    Label* m_number = nullptr;
    Label* m_customer = nullptr;
    Label* m_state = nullptr;
    Label* m_note = nullptr;
    Label* m_garments = nullptr;
    FactBlock* m_total = nullptr;
    FactBlock* m_paid = nullptr;
    HistoryLines* m_history = nullptr;
    Button* m_putBack = nullptr;
};

} // namespace holdfast::app

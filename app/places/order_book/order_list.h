// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The list of the order book. What is typed in it goes to an order: digits to the one whose number begins so,
// letters to the next customer of whose name a word begins so. Enter goes into the order.

#include "app/places/order_book/order_model.h"
#include "app/widgets/type_ahead.h"

#include <QListView>

namespace holdfast::app {

class OrderList : public QListView {
    Q_OBJECT

public:
    explicit OrderList(OrderModel& model, QWidget* parent = nullptr);

    void keyboardSearch(const QString& typed) override;

signals:
    void entered();

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    TypeAhead m_typeAhead;
};

} // namespace holdfast::app

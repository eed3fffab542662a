#pragma once
// The list of the order book. What is typed in it goes to an order: digits to the one whose number begins so,
// letters to the next customer of whose name a word begins so. Enter goes into the order.

#include "app/places/order_book/order_model.h"

#include <QElapsedTimer>
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
    bool isMeant(int row) const;

    OrderModel& m_model;
    QString m_typed;
    QElapsedTimer m_sinceTyped;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The customers that a typed name or number may mean, below the field it is typed in. The keyboard stays in
// the field: Down takes up the list, Enter chooses, Escape closes it.

#include "core/facts/order.h"

#include <QWidget>

#include <vector>

namespace holdfast::app {

class CustomerList : public QWidget {
    Q_OBJECT

public:
    explicit CustomerList(QWidget* parent = nullptr);

    // None hides it.
    void show(const std::vector<Customer>& customers);
    int count() const { return static_cast<int>(m_customers.size()); }
    int chosenAt() const { return m_chosen; } // -1: the list is not taken up
    void pickFirst();                         // REQUIRES: there is one
    // Whether the key was the list's. REQUIRES: it is shown.
    bool takeKey(QKeyEvent* event);

    QSize sizeHint() const override;

signals:
    void picked(const holdfast::Customer& customer);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    int rowAt(QPoint at) const;
    void choose(int row);
    void pick(int row);

    std::vector<Customer> m_customers;
    int m_chosen = -1;
};

} // namespace holdfast::app

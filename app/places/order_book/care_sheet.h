// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The care text that goes with the garments of an order, and the hand-over itself.

#include "app/places/order_book/order_view.h"

#include <QWidget>

namespace holdfast::app {

class Banner;
class Button;
class Label;
class VerticalScroll;

class CareSheet : public QWidget {
    Q_OBJECT

public:
    explicit CareSheet(ShopDesk& desk, QWidget* parent = nullptr);

    void show(const OrderView& view);
    void begin(); // the keyboard on the one thing to do

signals:
    void handedOver();
    void left();
    void moneyAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void fillText();
    void handOver();
    void copy();
    void print();

    ShopDesk& m_desk;
    std::optional<OrderView> m_view;
    std::vector<const Garment*> m_garments;
    Label* m_title = nullptr;
    Label* m_note = nullptr;
    Banner* m_owed = nullptr;
    Banner* m_rest = nullptr;
    Banner* m_waits = nullptr;
    VerticalScroll* m_text = nullptr;
    Button* m_handOver = nullptr;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The care text that goes with the garments of an order, and the hand-over itself.

#include "app/places/order_book/order_view.h"

#include <QWidget>

#include <set>
#include <vector>

namespace holdfast::app {

class Banner;
class Button;
class Label;
class Switch;
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
    void fillChoice();
    void choose(GarmentId garment, bool goes);
    void showChosen();
    void fillText();
    void handOver();
    void copy();
    void print();

    ShopDesk& m_desk;
    std::optional<OrderView> m_view;
    std::vector<const Garment*> m_garments; // that go now, or went
    std::vector<const Garment*> m_pressed;  // of which those are chosen
    std::set<GarmentId> m_stays;            // pressed, but not collected this time
    QWidget* m_choice = nullptr;            // which of several go now
    std::vector<GarmentId> m_asked;
    std::vector<Switch*> m_goes;
    Label* m_title = nullptr;
    Label* m_note = nullptr;
    Banner* m_owed = nullptr;
    Banner* m_rest = nullptr;
    Banner* m_waits = nullptr;
    VerticalScroll* m_text = nullptr;
    Button* m_handOver = nullptr;
};

} // namespace holdfast::app

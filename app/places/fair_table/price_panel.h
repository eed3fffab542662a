// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the maker asks instead of the shop's prices, in the middle of the table: the price of the garment at
// hand, a discount with its reason, and extras in words. All of it goes into the order as it is typed; Enter
// goes on, Escape closes.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

class QHBoxLayout;
class QVBoxLayout;

namespace holdfast::app {

class Button;
class Field;
class FlowLayout;
class Label;

class PricePanel : public QWidget {
    Q_OBJECT

public:
    explicit PricePanel(FairTableModel& model, QWidget* parent = nullptr);

    void begin(); // with the keyboard in the price
    void refresh();

    QSize minimumSizeHint() const override { return {200, 0}; }

signals:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void build();
    QHBoxLayout* rowOf(std::initializer_list<Field*> fields);
    void connectAll();
    void typePrice(const QString& text);
    void typeDiscount();
    void addExtra();
    void addUsual(const UsualExtra& extra);
    void goOn();
    void refreshPrice();
    void refreshUsual();

    FairTableModel& m_model;
    Label* m_title = nullptr;
    Field* m_price = nullptr;
    Label* m_usual = nullptr;
    Field* m_discount = nullptr;
    Field* m_because = nullptr;
    Field* m_extra = nullptr;
    Field* m_amount = nullptr;
    Button* m_add = nullptr;
    FlowLayout* m_usualExtras = nullptr;
    QWidget* m_usualRow = nullptr;
    std::vector<UsualExtra> m_usualShown;
};

} // namespace holdfast::app

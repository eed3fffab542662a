// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is in the tub, a row for each style, size and colour with how many. A row stays the same widget while
// its number changes, so that the keyboard stays on its stepper.

#include "app/desk/shop_desk.h"
#include "app/places/blank_rail/wash_basket.h"

#include <QWidget>

class QVBoxLayout;

namespace holdfast::app {

class Label;
class Stepper;

class WashRows : public QWidget {
    Q_OBJECT

public:
    explicit WashRows(QWidget* parent = nullptr);

    void show(const ReckonedShop& shop, const WashBasket& basket);

signals:
    void stepped(const holdfast::app::RailSpot& spot, int units);

private:
    struct Row {
        QWidget* whole = nullptr;
        Label* waiting = nullptr;
        Stepper* units = nullptr;
    };
    Row makeRow(const ReckonedShop& shop, const RailSpot& spot);
    void fill(const Row& row, const ReckonedShop& shop, const RailSpot& spot, std::int64_t units);

    QVBoxLayout* m_column = nullptr;
    Label* m_nothing = nullptr;
    std::map<RailSpot, Row> m_rows;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Tonight's wash: what goes in, how it is washed, what waits for it, and the loads that are not dry yet. The
// tub holds what a person put in; when the wash starts it is empty, whatever hangs unwashed still.

#include "app/desk/shop_desk.h"
#include "app/places/blank_rail/wash_basket.h"
#include "app/widgets/card.h"

namespace holdfast::app {

class Banner;
class Button;
class Choice;
class Field;
class Stepper;
class Switch;
class VerticalScroll;
class WashRows;
class WashTub;

class WashCard : public Card {
    Q_OBJECT

public:
    WashCard(ShopDesk& desk, WashBasket& basket, QWidget* parent = nullptr);

    // Shows the basket and the loads as they are now.
    void refresh();
    void start();
    void focusStart();
    // All of it at once, without a scroll bar: whoever holds the card scrolls it.
    void setWhole(bool isWhole);

signals:
    void basketChanged();
    void washStarted();

private:
    QWidget* makeHow();
    db::WashPlan plan() const;
    void fillFrees();
    void fillLoads();
    void fillWarnings();
    void beginDetergent();

    ShopDesk& m_desk;
    WashBasket& m_basket;
    WashTub* m_tub = nullptr;
    VerticalScroll* m_scroll = nullptr;
    WashRows* m_rows = nullptr;
    QWidget* m_frees = nullptr;
    QWidget* m_loads = nullptr;
    Banner* m_softenerWarning = nullptr;
    Banner* m_bleedWarning = nullptr;
    Banner* m_fullWarning = nullptr;
    Field* m_detergent = nullptr;
    Stepper* m_water = nullptr;
    Switch* m_softener = nullptr;
    Switch* m_sheet = nullptr;
    Choice* m_drying = nullptr;
    Button* m_start = nullptr;
};

} // namespace holdfast::app

#pragma once
// Tonight's wash: what goes in, how it is washed, what it frees, and the loads that are not dry yet.

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
class WashTub;

class WashCard : public Card {
    Q_OBJECT

public:
    WashCard(ShopDesk& desk, WashBasket& basket, QWidget* parent = nullptr);

    // Shows the basket and the loads as they are now.
    void refresh();
    void start();
    void focusStart();

signals:
    void basketChanged();

private:
    QWidget* makeHow();
    QWidget* rowFor(const RailSpot& spot, std::int64_t units);
    void fillRows();
    void fillFrees();
    void fillLoads();
    void fillWarnings();
    void beginDetergent();

    ShopDesk& m_desk;
    WashBasket& m_basket;
    WashTub* m_tub = nullptr;
    VerticalScroll* m_scroll = nullptr;
    QWidget* m_rows = nullptr;
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

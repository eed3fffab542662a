// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Blank rail: what hangs there by style, size and colour, washed or not, and the next wash.

#include "app/desk/place.h"
#include "app/places/blank_rail/rail_stock.h"
#include "app/places/blank_rail/wash_basket.h"

class QBoxLayout;
class QStackedWidget;

namespace holdfast::app {

class Card;
class Chip;
class EmptyState;
class Label;
class RailGrid;
class RailStand;
class RailTable;
class VerticalScroll;
class WashCard;

class BlankRailPlace : public Place {
    Q_OBJECT

public:
    explicit BlankRailPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    QVector<PlaceKey> moreKeys() const override;
    void opened() override;
    void turnTo(const SlipTarget& matter) override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeRail();
    QWidget* makeFoot();
    QWidget* makeEmpty();
    void layCards();
    void refresh();
    void showStyle(int style);
    void addToWash(std::int64_t units);
    void openCell();
    void ask(SlipName slip);
    void askOfStyle(SlipName slip);
    void markOldestDry();
    const StyleRail* shown() const;
    bool hangsAt(const RailSpot& spot) const;

    std::shared_ptr<const ReckonedShop> m_shop;
    std::vector<StyleRail> m_rail;
    int m_style = 0;
    WashBasket m_basket;
    bool m_isStale = true;
    QStackedWidget* m_pages = nullptr;
    EmptyState* m_empty = nullptr;
    VerticalScroll* m_scroll = nullptr;
    QBoxLayout* m_cards = nullptr;
    RailStand* m_stand = nullptr;
    RailTable* m_table = nullptr;
    RailGrid* m_grid = nullptr;
    WashCard* m_wash = nullptr;
    QWidget* m_tools = nullptr;
    Chip* m_short = nullptr;
    Label* m_counts = nullptr;
};

} // namespace holdfast::app

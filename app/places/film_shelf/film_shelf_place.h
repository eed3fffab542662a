// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Film shelf: which rolls to use up first and with which waiting work; which are past their limit or were
// badly kept, and what to do about each.

#include "app/desk/place.h"
#include "app/places/film_shelf/shelf_model.h"

#include <set>
#include <vector>

class QBoxLayout;
class QStackedWidget;

namespace holdfast::app {

class AirCard;
class Card;
class Chip;
class EmptyState;
class Label;
class PickList;
class RollPanel;
class ShelfView;

class FilmShelfPlace : public Place {
    Q_OBJECT

public:
    explicit FilmShelfPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void turnTo(const SlipTarget& matter) override;
    // A roll's label turns to that roll; of one that is used up it is said.
    bool takeScan(const SlipTarget& matter) override;
    void takeKeyboard() override;
    QSize minimumSizeHint() const override;

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeShelf();
    void makeAirKeys();
    void refresh();
    void fillChoices();
    void showShelf();
    void showRoll();
    void countTools();
    void showLength();
    void choose(const ShelfChoice& choice);
    void turnToRoll(RollId roll);
    void askNewRoll();
    void showAir(bool isShown);
    void noteRolls(bool isLookedAt);
    void arrange();
    void askCorrection(PlaceId place, Instant at);
    void removeReadings(PlaceId place, Instant first, Instant last, int count);

    ShelfModel m_model;
    ShelfView* m_shelf = nullptr;
    QStackedWidget* m_pages = nullptr;  // the shelf with its panel, or the empty shop
    QStackedWidget* m_boards = nullptr; // the boards, or that none is of this film
    Card* m_emptyCard = nullptr;
    EmptyState* m_empty = nullptr;
    EmptyState* m_none = nullptr;
    PickList* m_films = nullptr;
    std::vector<ShelfChoice> m_choices; // of m_films, by row
    ShelfChoice m_choice;
    QBoxLayout* m_row = nullptr;      // the shelf and the roll, side by side or one above the other
    Card* m_card = nullptr;           // around the boards
    QStackedWidget* m_left = nullptr; // the shelf, or the air in full
    AirCard* m_air = nullptr;
    RollPanel* m_panel = nullptr;
    QWidget* m_tools = nullptr;
    Chip* m_past = nullptr;
    Chip* m_badlyKept = nullptr;
    Chip* m_failed = nullptr;
    Chip* m_soon = nullptr;
    Label* m_length = nullptr;
    std::set<RollId> m_known; // rolls that were here when it was last shown
    bool m_hasRolls = false;  // on the shelf
    bool m_isStale = true;
};

} // namespace holdfast::app

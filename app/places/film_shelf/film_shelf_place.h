#pragma once
// Film shelf: which rolls to use up first and with which waiting work; which are past their limit or were
// badly kept, and what to do about each.

#include "app/desk/place.h"
#include "app/places/film_shelf/shelf_model.h"

#include <vector>

class QComboBox;
class QHBoxLayout;
class QStackedWidget;

namespace holdfast::app {

class AirCard;
class Card;
class Chip;
class EmptyState;
class Label;
class RollPanel;
class ShelfView;

class FilmShelfPlace : public Place {
    Q_OBJECT

public:
    explicit FilmShelfPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void turnTo(const Matter& matter) override;

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    QWidget* makeShelf();
    void refresh();
    void fillChoices();
    void showShelf();
    void showRoll();
    void countTools();
    void choose(const ShelfChoice& choice);
    void turnToRoll(RollId roll);
    void askNewRoll();
    void showAir(bool isShown);
    void turnToShelf();

    ShelfModel m_model;
    ShelfView* m_shelf = nullptr;
    QStackedWidget* m_pages = nullptr;  // the shelf with its panel, or the empty shop
    QStackedWidget* m_boards = nullptr; // the boards, or that none is of this film
    Card* m_emptyCard = nullptr;
    EmptyState* m_empty = nullptr;
    EmptyState* m_none = nullptr;
    QComboBox* m_films = nullptr;
    std::vector<ShelfChoice> m_choices; // of m_films, by row
    ShelfChoice m_choice;
    QStackedWidget* m_left = nullptr; // the shelf, or the air in full
    AirCard* m_air = nullptr;
    RollPanel* m_panel = nullptr;
    QWidget* m_tools = nullptr;
    Chip* m_past = nullptr;
    Chip* m_badlyKept = nullptr;
    Chip* m_failed = nullptr;
    Chip* m_soon = nullptr;
    Label* m_length = nullptr;
    bool m_isStale = true;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One roll: what it is and how it was kept, its air, the work that waits for it or its ledger, and everything
// that can be done with it. The one thing to do now is the indigo button.

#include "app/desk/shop_desk.h"
#include "app/places/film_shelf/air_window.h"
#include "app/places/film_shelf/roll_ledger.h"
#include "app/places/film_shelf/roll_work.h"
#include "app/places/film_shelf/shelf_words.h"
#include "app/widgets/card.h"

class QStackedWidget;

namespace holdfast::app {

class Banner;
class Button;
class ClimatePanel;
class ElidingLabel;
class Label;
class RollFacts;
class RollSwatch;
class SpokenForBar;

class RollPanel : public Card {
    Q_OBJECT

public:
    explicit RollPanel(ShopDesk& desk, QWidget* parent = nullptr);

    void show(RollId roll);
    void clear();

    AirWindow window() const;
    void takeNextWindow();
    bool showsAir() const; // in its own chart

    // From what if, or the ledger, to what the roll is; false where that is shown already.
    bool goBack();
    // Puts the keyboard on the waiting work; where none waits, nothing happens.
    void turnToWork();

signals:
    void keyboardLeft(); // back to where rolls are chosen
    void airAsked();     // the air of its place in full
    void windowChosen();

private:
    void makeHead();
    QWidget* makeAbout();
    void makeWork();
    QWidget* makeActs();
    Button* act(const QString& words, const QString& iconName, Qt::Key key, const char* name,
                const std::function<void()>& done);
    void ask(SlipName slip);
    void printLabel();
    void showHead();
    void showAdvice();
    void showWork();
    void showActs();
    void setWhatIf(bool isWhatIf);
    void showWhatIf();
    void turnPage();
    void readLedger();
    void takeTickedToBench();
    void putAway();
    const FilmRoll& roll() const { return m_shop->facts.rolls.at(*m_roll); }
    const Film& film() const { return m_shop->facts.films.at(roll().film); }

    ShopDesk& m_desk;
    std::shared_ptr<const ReckonedShop> m_shop;
    std::optional<RollId> m_roll;
    Advice m_advice;
    RollWorkModel m_work;
    RollLedgerModel m_ledger;

    QWidget* m_body = nullptr;
    QWidget* m_about = nullptr; // what it is and how it was kept
    RollSwatch* m_swatch = nullptr;
    ElidingLabel* m_name = nullptr;
    Label* m_what = nullptr;
    Banner* m_banner = nullptr;
    RollFacts* m_facts = nullptr;
    ClimatePanel* m_climate = nullptr;
    Label* m_workTitle = nullptr;
    QStackedWidget* m_pages = nullptr;
    RollWorkList* m_workList = nullptr;
    Label* m_noWork = nullptr;
    RollLedgerList* m_ledgerList = nullptr;
    SpokenForBar* m_bar = nullptr;
    Label* m_spokenFor = nullptr;
    Button* m_cut = nullptr;
    Button* m_whatIf = nullptr;
    Button* m_page = nullptr;
    Button* m_airInFull = nullptr; // while its own chart is not shown
    Button* m_reading = nullptr;
    Button* m_import = nullptr;
    Button* m_strip = nullptr;
    Button* m_away = nullptr;
    Button* m_move = nullptr;
    Button* m_useUp = nullptr;
    Button* m_recipe = nullptr;
    Button* m_label = nullptr;
    Button* m_film = nullptr;
    Button* m_nextShade = nullptr;
    bool m_showsLedger = false;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Below the garment: which artwork, which film, which words, and what is said of them at once. The list of
// films opens in its place.

#include "app/places/fair_table/fair_table_model.h"

#include <QPointer>
#include <QWidget>

class QBoxLayout;
class QStackedLayout;

namespace holdfast::app {

class Button;
class Choice;
class Field;
class FilmList;
class MessageScroll;
class PricePanel;
class TeamPanel;

class DecalPanel : public QWidget {
    Q_OBJECT

public:
    explicit DecalPanel(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(Section section);
    void openFilms();
    void openTeam();     // the list of a team, for the garment at hand or the one before
    void openPrice();    // by hand, of the garment at hand; discount and extras
    void addSameAgain(); // with the keyboard on its wording
    // What is said of the order. It is at the end of this panel, unless it is laid elsewhere.
    MessageScroll* messages() const { return m_messages; }
    void takeMessages(); // back to its end
    // In a column that scrolls the list of films is as high as it needs.
    void setWhole(bool isWhole) { m_isWhole = isWhole; }
    // Says what is wrong at the words field; empty takes it away.
    void setWordsError(const QString& words);

signals:
    void keyboardFreed(); // what had it is gone

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* buildPicks();
    void connectPicks();
    void refreshArtworks();
    void refreshFilm();
    void refreshWords();
    void connectFilms();
    void connectTeam();
    bool areFilmsOpen() const;
    void showInColumn(QWidget* page);
    void closeFilms(); // and gives the keyboard back
    void showPicks();

    FairTableModel& m_model;
    QStackedLayout* m_pages = nullptr;
    Choice* m_artworks = nullptr;
    Button* m_another = nullptr;
    Button* m_film = nullptr;
    QBoxLayout* m_column = nullptr;
    QBoxLayout* m_filmRow = nullptr;
    QBoxLayout* m_wordsRow = nullptr;
    Field* m_words = nullptr;
    Choice* m_face = nullptr;
    MessageScroll* m_messages = nullptr;
    FilmList* m_films = nullptr;
    TeamPanel* m_team = nullptr;
    PricePanel* m_price = nullptr;
    QPointer<QWidget> m_beforeFilms; // what had the keyboard
    bool m_isWhole = false;
};

} // namespace holdfast::app

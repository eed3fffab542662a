// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The air of the storage place of a roll, in full: the chart, its figures over the window that was chosen,
// and another place next to it; or every reading of it, to correct or remove.

#include "app/places/film_shelf/air_reckoning.h"
#include "app/places/film_shelf/air_window.h"
#include "app/places/film_shelf/climate_chart.h"
#include "app/places/film_shelf/readings_list.h"
#include "app/widgets/card.h"
#include "core/shop/reckoned_shop.h"

#include <optional>

class QGridLayout;
class QStackedWidget;

namespace holdfast::app {

class Button;
class Label;
class VerticalScroll;

class AirCard : public Card {
    Q_OBJECT

public:
    explicit AirCard(QWidget* parent = nullptr);

    void show(std::shared_ptr<const ReckonedShop> shop, RollId roll, AirWindow window);
    void takeKeyboard();
    bool showsFigures() const;

signals:
    void left(); // back to the shelf
    void nextWindowAsked();
    void correctionAsked(PlaceId place, Instant at);
    void removalAsked(PlaceId place, Instant first, Instant last, int count);

protected:
    void changeEvent(QEvent* event) override;

private:
    QWidget* makeHead();
    QWidget* makeFigures();
    QWidget* makeReadings();
    void turnPage();
    void fillReadings();
    void showActs();
    void askCorrection();
    void askRemoval();
    void takeNextBeside();
    void ask();
    void answer(const std::vector<AirAnswer>& answers);
    void draw(const std::vector<AirAnswer>& answers);
    void fillTable(const std::vector<AirAnswer>& answers);
    QString placeName(PlaceId place) const;
    std::shared_ptr<const ClimateSeries> readingsOf(PlaceId place) const;
    const FilmRoll& roll() const { return m_shop->facts.rolls.at(m_roll); }
    const Film& film() const { return m_shop->facts.films.at(roll().film); }

    std::shared_ptr<const ReckonedShop> m_shop;
    RollId m_roll;
    AirWindow m_window = AirWindow::Month;
    std::optional<PlaceId> m_beside;
    std::vector<PlaceId> m_asked; // in addition to the answers that are waited for
    AirReckoning m_reckoning;
    QStackedWidget* m_pages = nullptr; // the figures, or the readings
    VerticalScroll* m_figures = nullptr;
    ReadingsModel m_readings;
    ReadingsList* m_list = nullptr;
    Label* m_noReading = nullptr;
    Label* m_where = nullptr;
    Button* m_page = nullptr;
    Button* m_windowButton = nullptr;
    Button* m_correct = nullptr;
    Button* m_remove = nullptr;
    Button* m_besideButton = nullptr;
    ClimateChart* m_chart = nullptr;
    QString m_cannotLoad;
    Label* m_words = nullptr;
    Label* m_compared = nullptr;
    QWidget* m_table = nullptr;
    QGridLayout* m_rows = nullptr;
};

} // namespace holdfast::app

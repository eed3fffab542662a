// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/climate_panel.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/chart_loader.h"
#include "app/places/film_shelf/roll_air.h"
#include "app/places/film_shelf/shelf_words.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QEvent>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kChartHeight = 148;
constexpr int kLeastPanelChart = 92;
constexpr int kWindowHeight = 32;

bool hasReadings(const ClimatePicture& picture) {
    for (const AirPiece& piece : picture.air) {
        const auto first = std::ranges::lower_bound(*piece.readings, piece.from, {}, &ClimateReading::at);
        if (first != piece.readings->end() && first->at <= piece.to)
            return true;
    }
    return false;
}

} // namespace

ClimatePanel::ClimatePanel(QWidget* parent)
    : QWidget(parent) {
    m_column = new QVBoxLayout(this);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(0);
    auto* head = new QHBoxLayout;
    head->setSpacing(kSpace8);
    m_place = new ElidingLabel({}, Type::BodyStrong);
    head->addWidget(m_place, 1);
    m_window = new Button({}, Button::Kind::Quiet);
    m_window->setObjectName(QStringLiteral("climateWindow"));
    m_window->setToolTip(tr("How far back: 30 days, 90, since the roll came, or all readings"));
    m_window->setTargetHeight(kWindowHeight);
    m_window->showKey(QKeySequence(Qt::Key_D)); // the place hears it, also while the air is shown in full
    connect(m_window, &Button::clicked, this, &ClimatePanel::takeNextWindow);
    head->addWidget(m_window);
    auto* inFull = new Button(tr("In full"), Button::Kind::Quiet);
    inFull->setObjectName(QStringLiteral("airInFull"));
    inFull->setToolTip(tr("The air of this place in figures, compared with another place"));
    inFull->setTargetHeight(kWindowHeight);
    inFull->showKey(QKeySequence(Qt::Key_G));
    connect(inFull, &Button::clicked, this, &ClimatePanel::inFullAsked);
    head->addWidget(inFull);
    m_column->addLayout(head);
    m_instead = new Label({}, Type::Support, &Tokens::ink2);
    m_instead->setObjectName(QStringLiteral("climateInstead"));
    m_instead->wrapped();
    m_instead->hide();
    m_column->addWidget(m_instead, 1);
}

void ClimatePanel::takeNextWindow() {
    m_windowChosen = nextOf(m_windowChosen);
    draw();
    emit windowChosen();
}

void ClimatePanel::loadChart() {
    if (m_chart || !m_cannotLoad.isEmpty())
        return;
    QString reason;
    m_chart = makeClimateChart(this, reason);
    if (!m_chart) {
        m_cannotLoad = tr("The chart cannot be drawn: %1.").arg(reason);
        return;
    }
    QWidget* chart = m_chart->widget();
    chart->setObjectName(QStringLiteral("climateChart"));
    chart->setMinimumHeight(kLeastPanelChart);
    chart->setMaximumHeight(kChartHeight);
    m_column->addWidget(chart, 1);
    m_chart->setDress(chartDress());
}

void ClimatePanel::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange && m_chart)
        m_chart->setDress(chartDress());
    QWidget::changeEvent(event);
}

void ClimatePanel::show(std::shared_ptr<const ReckonedShop> shop, RollId roll) {
    m_shop = std::move(shop);
    m_roll = roll;
    draw();
}

void ClimatePanel::draw() {
    if (!m_shop)
        return;
    const FilmRoll& roll = m_shop->facts.rolls.at(m_roll);
    const Film& film = m_shop->facts.films.at(roll.film);
    const RollCondition& condition = m_shop->conditions.at(m_roll);
    const auto place = roll.placeNow();
    const StoragePlace* found = place ? m_shop->facts.places.find(*place) : nullptr;
    m_place->setText(found ? words(found->name) : tr("In no storage place"));

    m_window->setText(windowWords(m_windowChosen));
    const RollPicture shown = pictureOf(*m_shop, roll, windowOf(m_windowChosen, *m_shop, roll));
    const ClimatePicture& picture = shown.picture;
    QString figures;
    if (condition.latest)
        figures =
            tr("%1 and %2 at the last reading, %3.")
                .arg(condition.latest->hasHumidity ? humidity(condition.latest->humidity)
                                                   : tr("humidity not known"),
                     celsius(condition.latest->temperature),
                     dayInShort(dateOf(m_shop->now.toLocal(condition.latest->at)), m_shop->now.today()));
    const bool isKnown = hasReadings(picture);
    if (isKnown)
        loadChart();
    if (!isKnown)
        m_instead->setText(tr("No reading of this place, %1. %2").arg(windowWords(m_windowChosen), figures));
    else if (!m_chart)
        m_instead->setText(m_cannotLoad + QLatin1Char(' ') + figures);
    const bool hasChart = isKnown && m_chart;
    m_instead->setVisible(!hasChart);
    if (!m_chart)
        return;
    m_chart->widget()->setVisible(hasChart);
    if (!hasChart)
        return;
    m_chart->setPicture(picture);
    m_chart->widget()->setAccessibleName(tr("Air of %1, %2. %3 %4 outside %5.")
                                             .arg(m_place->text(), windowWords(m_windowChosen), figures,
                                                  hourCount(shown.humidityHoursOutside),
                                                  humidityBandWords(film)));
}

} // namespace holdfast::app

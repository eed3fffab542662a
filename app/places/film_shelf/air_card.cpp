#include "app/places/film_shelf/air_card.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/air_words.h"
#include "app/places/film_shelf/chart_loader.h"
#include "app/places/film_shelf/roll_air.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"

#include <QEvent>
#include <QGridLayout>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kCardTitle = 52;
constexpr int kLeastChartHeight = 180;
constexpr int kNameColumn = 190;

} // namespace

AirCard::AirCard(QWidget* parent)
    : Card(QString(), parent) {
    setObjectName(QStringLiteral("airCard"));
    setTitle(tr("Air"));
    setTitleHeight(kCardTitle);
    m_besideButton = new Button({}, Button::Kind::Quiet);
    m_besideButton->setObjectName(QStringLiteral("besidePlace"));
    m_besideButton->setKey(QKeySequence(Qt::Key_B));
    connect(m_besideButton, &Button::clicked, this, &AirCard::takeNextBeside);
    addToTitle(m_besideButton);
    auto* back = new Button(tr("Back to the shelf"), Button::Kind::Quiet);
    back->setObjectName(QStringLiteral("backToShelf"));
    back->showKey(QKeySequence(Qt::Key_Escape));
    connect(back, &Button::clicked, this, &AirCard::left);
    addToTitle(back);

    pad();
    m_words = new Label({}, Type::Body, &Tokens::ink2);
    m_words->setObjectName(QStringLiteral("airWords"));
    m_words->wrapped();
    m_compared = new Label({}, Type::BodyStrong);
    m_compared->setObjectName(QStringLiteral("airCompared"));
    m_compared->wrapped();
    m_table = new QWidget;
    m_rows = new QGridLayout(m_table);
    m_rows->setContentsMargins(0, 0, 0, 0);
    m_rows->setHorizontalSpacing(kSpace16);
    m_rows->setVerticalSpacing(kSpace4);
    m_rows->setColumnMinimumWidth(0, kNameColumn);
    content()->addWidget(m_words);
    content()->addWidget(new ThreadLine);
    content()->addWidget(m_table);
    content()->addWidget(m_compared);
    connect(&m_reckoning, &AirReckoning::reckoned, this, &AirCard::answer);
}

void AirCard::show(std::shared_ptr<const ReckonedShop> shop, RollId rollShown, AirWindow window) {
    m_shop = std::move(shop);
    m_roll = rollShown;
    m_window = window;
    if (m_beside && (m_beside == roll().placeNow() || !readingsOf(*m_beside)))
        m_beside.reset();
    ask();
}

QString AirCard::placeName(PlaceId place) const {
    const StoragePlace* found = m_shop->facts.places.find(place);
    return found ? words(found->name) : QString();
}

std::shared_ptr<const ClimateSeries> AirCard::readingsOf(PlaceId place) const {
    const auto found = m_shop->climate.find(place);
    return found == m_shop->climate.end() || !found->second || found->second->empty() ? nullptr
                                                                                      : found->second;
}

// The next place by name that has readings, then none.
void AirCard::takeNextBeside() {
    std::vector<PlaceId> others;
    for (const StoragePlace& place : m_shop->facts.places)
        if (place.id != roll().placeNow() && readingsOf(place.id))
            others.push_back(place.id);
    std::ranges::sort(others, {}, [this](PlaceId place) { return placeName(place); });
    const auto now = m_beside ? std::ranges::find(others, *m_beside) : others.end();
    const auto next = m_beside && now != others.end() ? std::next(now) : others.begin();
    m_beside = next == others.end() ? std::nullopt : std::optional{*next};
    ask();
}

void AirCard::ask() {
    const auto here = roll().placeNow();
    setTitle(here ? tr("Air of %1").arg(placeName(*here)) : tr("In no place"));
    setNote(windowWords(m_window));
    m_besideButton->setText(m_beside ? tr("Beside: %1").arg(placeName(*m_beside))
                                     : tr("Beside another place"));
    const ClimateWindow window = windowOf(m_window, *m_shop, roll());
    m_asked.clear();
    std::vector<AirAsked> asked;
    for (const std::optional<PlaceId>& place : {here, m_beside}) {
        const auto readings = place ? readingsOf(*place) : nullptr;
        if (!readings)
            continue;
        m_asked.push_back(*place);
        asked.push_back({readings, window, film().storage});
    }
    if (asked.empty()) {
        answer({});
        return;
    }
    m_words->setText(tr("Reckoning the readings."));
    m_words->show();
    m_reckoning.begin(std::move(asked));
}

void AirCard::answer(const std::vector<AirAnswer>& answers) {
    if (answers.size() != m_asked.size())
        return; // stopped
    fillTable(answers);
    const bool hasLines =
        std::ranges::any_of(answers, [](const AirAnswer& each) { return each.figures.recordedHours > 0; });
    if (hasLines && !m_chart && m_cannotLoad.isEmpty()) {
        QString reason;
        m_chart = makeClimateChart(this, reason);
        if (m_chart) {
            m_chart->widget()->setObjectName(QStringLiteral("airChart"));
            m_chart->widget()->setMinimumHeight(kLeastChartHeight);
            m_chart->setDress(chartDress());
            content()->insertWidget(0, m_chart->widget(), 1);
        } else {
            m_cannotLoad = tr("The chart cannot be drawn: %1.").arg(reason);
        }
    }
    if (m_chart) {
        m_chart->widget()->setVisible(hasLines);
        if (hasLines)
            draw(answers);
    }
    if (!hasLines)
        m_words->setText(tr("Nothing was recorded here, %1. Record a reading, or import a logger’s file.")
                             .arg(windowWords(m_window)));
    else if (!m_chart)
        m_words->setText(m_cannotLoad);
    else if (m_beside && m_asked.size() == 2)
        m_words->setText(tr("Thin and grey: %1.").arg(placeName(*m_beside)));
    else
        m_words->setText({});
    m_words->setVisible(!m_words->text().isEmpty());
}

void AirCard::draw(const std::vector<AirAnswer>& answers) {
    const ClimateWindow window = windowOf(m_window, *m_shop, roll());
    ClimatePicture picture;
    picture.from = window.from;
    picture.to = window.to;
    picture.countedFrom = window.from;
    picture.humidity = film().storage.humidity;
    picture.temperature = film().storage.temperature;
    picture.days = dayMarks(*m_shop, window);
    for (std::size_t at = 0; at < m_asked.size(); ++at) {
        auto& pieces = m_asked[at] == roll().placeNow() ? picture.air : picture.beside;
        pieces.push_back({readingsOf(m_asked[at]), window.from, window.to});
    }
    if (!picture.air.empty()) {
        addLongest(answers.front().humidSpells, Measure::Humidity, picture.spells);
        addLongest(answers.front().warmSpells, Measure::Temperature, picture.spells);
        const ClimateReading& latest = picture.air.front().readings->back();
        if (latest.at >= window.from) {
            picture.humidityNow = humidity(latest.humidity);
            picture.temperatureNow = celsius(Celsius{std::round(latest.temperature.value)});
        }
    }
    m_chart->setPicture(picture);
    m_chart->widget()->setAccessibleName(
        tr("Chart of temperature and humidity, %1").arg(windowWords(m_window)));
}

void AirCard::fillTable(const std::vector<AirAnswer>& answers) {
    while (QLayoutItem* item = m_rows->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    std::vector<ClimateFigures> figures;
    for (const AirAnswer& each : answers)
        figures.push_back(each.figures);
    int row = 0;
    if (m_asked.size() > 1)
        for (std::size_t at = 0; at < m_asked.size(); ++at)
            m_rows->addWidget(new Label(placeName(m_asked[at]), Type::SmallStrong,
                                        at == 0 ? &Tokens::indigo : &Tokens::ink2),
                              row, static_cast<int>(at) + 1);
    for (const AirRow& each : airRows(figures, film())) {
        if (each.values.isEmpty())
            continue;
        m_rows->addWidget(new Label(each.name, Type::Support, &Tokens::ink2), ++row, 0);
        for (int at = 0; at < each.values.size(); ++at)
            m_rows->addWidget(new Label(each.values[at], Type::Body), row, at + 1);
    }
    m_rows->setColumnStretch(1, 1);
    m_rows->setColumnStretch(2, m_asked.size() > 1 ? 1 : 0);
    m_compared->setText(figures.size() == 2 ? comparedWords(figures[0], figures[1], placeName(m_asked[1]))
                                            : QString());
    m_compared->setVisible(!m_compared->text().isEmpty());
}

void AirCard::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange && m_chart)
        m_chart->setDress(chartDress());
    Card::changeEvent(event);
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/air_card.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/air_words.h"
#include "app/places/film_shelf/chart_loader.h"
#include "app/places/film_shelf/roll_air.h"
#include "app/slips/form.h"
#include "app/widgets/button.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QEvent>
#include <QGridLayout>
#include <QStackedWidget>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kCardTitle = 52;
constexpr int kActHeight = 32;
constexpr int kLeastChartHeight = 180;

} // namespace

AirCard::AirCard(QWidget* parent)
    : Card(QString(), parent) {
    setObjectName(QStringLiteral("airCard"));
    setTitle(tr("Air"));
    setTitleHeight(kCardTitle);
    content()->addWidget(makeHead());
    m_pages = new QStackedWidget;
    m_pages->addWidget(makeFigures());
    m_pages->addWidget(makeReadings());
    content()->addWidget(m_pages, 1);
    connect(&m_reckoning, &AirReckoning::reckoned, this, &AirCard::answer);
    showActs();
}

// Whose air it is, and what else may be shown: in lines that break where a window is narrow or a name is
// long.
QWidget* AirCard::makeHead() {
    auto* head = new QWidget;
    auto* column = new QVBoxLayout(head);
    column->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace4);
    column->setSpacing(kSpace4);
    m_where = new Label({}, Type::BodyStrong);
    m_where->setObjectName(QStringLiteral("airWhere"));
    m_where->wrapped();
    column->addWidget(m_where);
    auto* acts = new QWidget;
    auto* flow = new FlowLayout(acts, kSpace8);
    m_page = new Button({});
    m_page->setObjectName(QStringLiteral("correctReadings"));
    m_page->setKey(QKeySequence(Qt::Key_K));
    connect(m_page, &Button::clicked, this, &AirCard::turnPage);
    m_besideButton = new Button({});
    m_besideButton->setObjectName(QStringLiteral("besidePlace"));
    m_besideButton->setKey(QKeySequence(Qt::Key_B));
    connect(m_besideButton, &Button::clicked, this, &AirCard::takeNextBeside);
    m_windowButton = new Button({});
    m_windowButton->setObjectName(QStringLiteral("airWindow"));
    m_windowButton->setToolTip(tr("How far back: 30 days, 90, since the roll came, or all readings"));
    m_windowButton->showKey(QKeySequence(Qt::Key_D)); // the place hears it
    connect(m_windowButton, &Button::clicked, this, &AirCard::nextWindowAsked);
    auto* back = new Button(tr("Back to the shelf"));
    back->setObjectName(QStringLiteral("backToShelf"));
    back->showKey(QKeySequence(Qt::Key_Escape));
    connect(back, &Button::clicked, this, &AirCard::left);
    for (Button* button : {m_page, m_windowButton, m_besideButton, back}) {
        button->setTargetHeight(kActHeight);
        flow->addWidget(button);
    }
    column->addWidget(acts);
    return head;
}

QWidget* AirCard::makeFigures() {
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
    m_figures = new VerticalScroll;
    m_figures->setFocusPolicy(Qt::StrongFocus); // the arrows scroll it
    QVBoxLayout* column = m_figures->column();
    column->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    column->setSpacing(kSpace12);
    column->addWidget(m_words);
    column->addWidget(new ThreadLine);
    column->addWidget(m_table);
    column->addWidget(m_compared);
    return m_figures;
}

QWidget* AirCard::makeReadings() {
    auto* page = new QWidget;
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    m_noReading = new Label(tr("There is no reading of it yet. Record one, or import a logger’s file."),
                            Type::Body, &Tokens::ink2);
    m_noReading->wrapped();
    m_noReading->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    column->addWidget(m_noReading);
    m_list = new ReadingsList(m_readings);
    column->addWidget(m_list, 1);
    column->addWidget(new ThreadLine);
    auto* foot = new QHBoxLayout;
    foot->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    foot->setSpacing(kSpace8);
    m_correct = new Button(tr("Correct reading"));
    m_correct->setObjectName(QStringLiteral("correctReading"));
    m_correct->showKey(QKeySequence(Qt::Key_Return));
    connect(m_correct, &Button::clicked, this, &AirCard::askCorrection);
    m_remove = new Button({});
    m_remove->setObjectName(QStringLiteral("removeReadings"));
    m_remove->showKey(QKeySequence(Qt::Key_Delete));
    connect(m_remove, &Button::clicked, this, &AirCard::askRemoval);
    foot->addWidget(m_correct);
    foot->addWidget(m_remove);
    foot->addStretch(1);
    column->addLayout(foot);
    connect(m_list, &ReadingsList::correctionAsked, this, &AirCard::askCorrection);
    connect(m_list, &ReadingsList::removalAsked, this, &AirCard::askRemoval);
    connect(m_list, &ReadingsList::choiceChanged, this, &AirCard::showActs);
    return page;
}

void AirCard::turnPage() {
    m_pages->setCurrentIndex(1 - m_pages->currentIndex());
    ask();
    showActs();
    takeKeyboard();
}

bool AirCard::showsFigures() const {
    return m_pages->currentIndex() == 0;
}

void AirCard::takeKeyboard() {
    QWidget* page = m_pages->currentIndex() == 0 ? static_cast<QWidget*>(m_figures) : m_list;
    page->setFocus(Qt::OtherFocusReason);
}

// What was current stays so while readings come and go.
void AirCard::fillReadings() {
    const auto here = roll().placeNow();
    const QModelIndex current = m_list->currentIndex();
    const std::optional<Instant> at =
        current.isValid() ? std::optional{m_readings.reading(current.row()).at} : std::nullopt;
    m_readings.show(here ? readingsOf(*here) : nullptr, film().storage, m_shop->now);
    const int rows = m_readings.rowCount();
    m_noReading->setVisible(rows == 0);
    m_list->setVisible(rows > 0);
    if (rows > 0)
        m_list->setCurrentIndex(m_readings.index(at ? std::clamp(m_readings.rowAt(*at), 0, rows - 1) : 0));
    showActs();
}

void AirCard::showActs() {
    const bool isReadings = !showsFigures();
    m_page->setText(isReadings ? tr("Figures") : tr("Readings"));
    m_besideButton->setVisible(!isReadings);
    m_windowButton->setVisible(!isReadings);
    const auto run = m_list->chosen();
    const int count = run ? run->count : 0;
    m_remove->setText(count == 0
                          ? tr("Remove reading")
                          : tr("Remove reading|Remove %1 readings", nullptr, count).arg(valueWords(count)));
    m_remove->setCannot(count > 0 ? QString() : tr("Choose a reading first."));
    m_correct->setCannot(count == 1  ? QString()
                         : count > 1 ? tr("One reading at a time is corrected.")
                                     : tr("Choose a reading first."));
}

void AirCard::askCorrection() {
    const auto here = roll().placeNow();
    const auto run = m_list->chosen();
    if (here && run && run->count == 1)
        emit correctionAsked(*here, run->first);
}

void AirCard::askRemoval() {
    const auto here = roll().placeNow();
    if (const auto run = m_list->chosen(); here && run)
        emit removalAsked(*here, run->first, run->last, run->count);
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
    const bool isReadings = m_pages->currentIndex() == 1;
    const QString name = here ? breakable(placeName(*here)) : tr("In no storage place");
    setTitle(isReadings ? tr("Readings") : tr("Air"));
    m_where->setText(isReadings ? name : tr("%1, %2").arg(name, windowWords(m_window)));
    if (isReadings) {
        fillReadings();
        return;
    }
    m_windowButton->setText(windowWords(m_window));
    m_besideButton->setText(m_beside ? tr("Compared with: %1").arg(placeName(*m_beside))
                                     : tr("Compare with another"));
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
    m_words->setText(tr("The figures are being worked out."));
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
            m_figures->column()->insertWidget(0, m_chart->widget(), 1);
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
            picture.humidityNow = latest.hasHumidity ? humidity(latest.humidity) : QString();
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
            m_rows->addWidget((new Label(each.values[at], Type::Body))->wrapped(), row, at + 1);
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

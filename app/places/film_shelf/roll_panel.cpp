#include "app/places/film_shelf/roll_panel.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/climate_panel.h"
#include "app/places/film_shelf/roll_air.h"
#include "app/theme/drawings.h"
#include "app/theme/stitch.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/film_actions.h"

#include <QGridLayout>
#include <QPainter>
#include <QStackedWidget>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::app {

class RollSwatch : public QWidget {
public:
    RollSwatch() { setFixedSize(44, 44); }

    void setShade(const QColor& shade) {
        m_shade = shade;
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintSwatch(painter, QRectF(rect()).adjusted(1, 1, -1, -1), m_shade, kButtonRadius);
    }

private:
    QColor m_shade;
};

// How much of the roll is spoken for, in the roll's own film.
class SpokenForBar : public QWidget {
public:
    SpokenForBar() { setFixedHeight(14); }

    void set(double share, const QColor& shade) {
        m_share = std::clamp(share, 0.0, 1.0);
        m_shade = shade;
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        const QRectF whole = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
        paintBox(painter, whole, 7, tokens().sunk, tokens().thread);
        if (m_share <= 0)
            return;
        QRectF part = whole;
        part.setWidth(std::max(14.0, whole.width() * m_share));
        paintBox(painter, part, 7, m_shade, outlineOf(m_shade));
    }

private:
    double m_share = 0;
    QColor m_shade;
};

namespace {

enum Page { WorkPage, NoWorkPage, LedgerPage };

QString since(const ReckonedShop& shop, const FilmRoll& roll) {
    return dayInShort(dateOf(shop.now.toLocal(exposureSince(shop, roll))), shop.now.today());
}

} // namespace

RollPanel::RollPanel(ShopDesk& desk, QWidget* parent)
    : Card(parent)
    , m_desk(desk) {
    setObjectName(QStringLiteral("rollPanel"));
    m_body = new QWidget;
    auto* whole = new QVBoxLayout(m_body);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(0);
    auto* scroll = new VerticalScroll;
    scroll->column()->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace8);
    scroll->column()->setSpacing(6);
    content()->addWidget(m_body);
    whole->addWidget(scroll, 1);

    makeHead();
    makeFacts();
    m_climate = new ClimatePanel;
    makeWork();

    auto* head = new QHBoxLayout;
    head->setSpacing(kSpace12);
    head->addWidget(m_swatch);
    auto* names = new QVBoxLayout;
    names->setSpacing(0);
    names->addWidget(m_name);
    names->addWidget(m_what);
    head->addLayout(names, 1);
    auto* facts = new QGridLayout;
    facts->setHorizontalSpacing(kSpace12);
    facts->setVerticalSpacing(kSpace4);
    facts->addWidget(m_age, 0, 0);
    facts->addWidget(m_warmAge, 0, 1);
    facts->addWidget(m_useBy, 1, 0);
    facts->addWidget(m_outside, 1, 1);
    facts->setColumnStretch(0, 1);
    facts->setColumnStretch(1, 1);
    auto* workHead = new QHBoxLayout;
    workHead->setSpacing(kSpace4);
    workHead->addWidget(m_workTitle, 1);
    workHead->addWidget(m_page);
    workHead->addWidget(m_cut);

    QVBoxLayout* column = scroll->column();
    column->addLayout(head);
    column->addWidget(m_banner);
    column->addWidget(new ThreadLine);
    column->addLayout(facts);
    column->addWidget(new ThreadLine);
    column->addWidget(m_climate, 1);
    column->addWidget(new ThreadLine);
    column->addLayout(workHead);
    column->addWidget(m_pages, 1);
    column->addWidget(m_bar);
    column->addWidget(m_spokenFor);
    whole->addWidget(new ThreadLine);
    whole->addWidget(makeActs());
    m_body->hide();
    connect(&m_work, &RollWorkModel::ticksChanged, this, [this] {
        if (m_roll)
            showActs();
    });
}

void RollPanel::makeHead() {
    m_swatch = new RollSwatch;
    m_name = new ElidingLabel({}, Type::CardTitle);
    m_name->setObjectName(QStringLiteral("rollName"));
    m_what = new Label({}, Type::Support, &Tokens::ink2);
    m_what->setObjectName(QStringLiteral("rollWhat"));
    m_what->wrapped();
    m_banner = new Banner;
    m_banner->setObjectName(QStringLiteral("rollAdvice"));
}

void RollPanel::makeFacts() {
    const auto fact = [](const QString& label, const char* name) {
        auto* made = new FactBlock(label);
        made->setObjectName(QLatin1String(name));
        return made;
    };
    m_age = fact(tr("Calendar age"), "calendarAge");
    m_warmAge = fact(tr("Age by warmth"), "ageByWarmth");
    m_useBy = fact(tr("Use-by"), "useBy");
    m_outside = fact({}, "hoursOutside");
}

void RollPanel::makeWork() {
    m_workTitle = new Label({}, Type::BodyStrong);
    m_page = new Button({}, Button::Kind::Quiet);
    m_page->setObjectName(QStringLiteral("ledgerPage"));
    m_page->setKey(QKeySequence(Qt::Key_L));
    connect(m_page, &Button::clicked, this, [this] {
        m_showsLedger = !m_showsLedger;
        turnPage();
    });
    m_cut = new Button(tr("Cut these"));
    m_cut->setObjectName(QStringLiteral("cutThese"));
    m_cut->setKey(QKeySequence(Qt::Key_C));
    connect(m_cut, &Button::clicked, this, &RollPanel::cutTicked);

    m_workList = new RollWorkList(m_work);
    connect(m_workList, &RollWorkList::turnedLeft, this, &RollPanel::shelfAsked);
    m_noWork = new Label({}, Type::Support, &Tokens::ink2);
    m_noWork->wrapped();
    m_noWork->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_ledgerList = new RollLedgerList(m_ledger);
    m_pages = new QStackedWidget;
    m_pages->insertWidget(WorkPage, m_workList);
    m_pages->insertWidget(NoWorkPage, m_noWork);
    m_pages->insertWidget(LedgerPage, m_ledgerList);
    m_bar = new SpokenForBar;
    m_spokenFor = new Label({}, Type::Small, &Tokens::ink2);
    m_spokenFor->setObjectName(QStringLiteral("spokenFor"));
    m_spokenFor->setTextFormat(Qt::RichText);
    m_spokenFor->wrapped();
}

Button* RollPanel::act(const QString& words, const QString& iconName, Qt::Key key, const char* name,
                       const std::function<void()>& done) {
    auto* button = new Button(words, iconName);
    button->setObjectName(QLatin1String(name));
    button->setKey(QKeySequence(key));
    connect(button, &Button::clicked, this, done);
    return button;
}

QWidget* RollPanel::makeActs() {
    m_reading = act(tr("Record a reading"), QStringLiteral("humidity"), Qt::Key_R, "recordReading",
                    [this] { ask(SlipName::RecordReading); });
    m_import = act(tr("Import"), {}, Qt::Key_I, "importReadings", [this] { ask(SlipName::ImportReadings); });
    m_import->setAccessibleName(tr("Import readings"));
    m_import->setToolTip(tr("Import readings from a logger’s file"));
    m_strip = act(tr("Test strip"), QStringLiteral("test-strip"), Qt::Key_T, "testStrip",
                  [this] { ask(SlipName::TestStrip); });
    m_away = act(tr("Put away"), QStringLiteral("shelf-away"), Qt::Key_A, "putAway", [this] { putAway(); });
    m_move = act(tr("Move"), {}, Qt::Key_M, "moveRoll", [this] { ask(SlipName::RollMove); });
    m_useUp = act(tr("Use up"), {}, Qt::Key_U, "useUpRoll", [this] { ask(SlipName::UseUpRoll); });
    m_recipe = act(tr("Recipe"), {}, Qt::Key_E, "recipe", [this] { ask(SlipName::Recipe); });

    auto* acts = new QWidget;
    auto* rows = new QVBoxLayout(acts);
    rows->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace12);
    rows->setSpacing(kSpace8);
    const std::array<std::vector<Button*>, 3> all{
        {{m_reading, m_import}, {m_strip, m_away}, {m_move, m_useUp, m_recipe}}};
    for (const std::vector<Button*>& buttons : all) {
        auto* row = new QHBoxLayout;
        row->setSpacing(kSpace8);
        for (Button* button : buttons)
            row->addWidget(button, 1);
        rows->addLayout(row);
    }
    return acts;
}

void RollPanel::ask(SlipName slip) {
    if (!m_roll)
        return;
    Matter matter;
    matter.roll = m_roll;
    matter.film = roll().film;
    matter.place = roll().placeNow();
    emit m_desk.slipAsked(slip, matter);
}

void RollPanel::show(RollId shown) {
    m_shop = m_desk.shop();
    m_roll = shown;
    m_advice = adviceFor(*m_shop, roll());
    m_body->show();
    showHead();
    showFacts();
    showAdvice();
    m_climate->show(m_shop, shown);
    m_work.show(m_shop, shown);
    showWork();
    showActs();
    turnPage();
}

void RollPanel::clear() {
    m_roll.reset();
    m_work.clear();
    m_shop.reset();
    m_body->hide();
}

void RollPanel::turnToWork() {
    if (m_showsLedger)
        m_ledgerList->setFocus(Qt::OtherFocusReason);
    else if (m_work.rowCount() > 0)
        m_workList->setFocus(Qt::OtherFocusReason);
}

void RollPanel::showHead() {
    m_swatch->setShade(colourOf(film().rgb));
    m_name->setText(tr("%1, %2").arg(words(roll().label()), words(film().name())));
    const QString came = dayInShort(roll().receivedOn, m_shop->now.today());
    m_what->setText(film().recipe ? tr("%1 left · received %2 · press %3")
                                        .arg(metres(roll().left), came, celsius(film().recipe->temperature))
                                  : tr("%1 left · received %2 · no recipe").arg(metres(roll().left), came));
}

void RollPanel::showFacts() {
    const RollCondition& condition = m_shop->conditions.at(*m_roll);
    const LocalDate today = m_shop->now.today();
    m_age->set(age(condition.calendarAge), roll().madeOn ? tr("made %1").arg(date(*roll().madeOn))
                                                         : tr("received %1").arg(date(roll().receivedOn)));

    const Days warm{std::lround(condition.effectiveDays)};
    const Days more = warm - condition.calendarAge;
    const Days unrecorded{std::lround(condition.unrecordedDays)};
    QString why = more > Days{0}   ? tr("%1 added by warmth").arg(dayCount(more))
                  : more < Days{0} ? tr("%1 spared by cool").arg(dayCount(-more))
                                   : tr("as by the calendar");
    if (condition.calendarAge > Days{0} && unrecorded * 2 > condition.calendarAge)
        why = tr("%1 unrecorded").arg(dayCount(unrecorded));
    m_warmAge->set(age(warm), why, more > Days{0} ? &Tokens::weld : &Tokens::ink);

    const auto limit = limitWithoutWarmth(film(), roll());
    QString maker = tr("the maker gives none");
    if (condition.extendedByStrip)
        maker = tr("by its test strip");
    else if (roll().printedUseBy)
        maker = tr("maker says %1").arg(dayInShort(*roll().printedUseBy, today));
    else if (limit)
        maker = tr("%1 by the calendar").arg(dayInShort(*limit, today));
    m_useBy->set(condition.useBy ? date(*condition.useBy) : tr("No limit given"), maker,
                 condition.isPastAge(today) ? &Tokens::madder : &Tokens::ink);

    // Humidity has the block; where only the temperature was out, it is said instead.
    const bool isTemperature = std::lround(condition.humidityHoursOutside) == 0 &&
                               std::lround(condition.temperatureHoursOutside) > 0;
    const Measure measure = isTemperature ? Measure::Temperature : Measure::Humidity;
    const double hours = isTemperature ? condition.temperatureHoursOutside : condition.humidityHoursOutside;
    m_outside->setLabel(
        tr("Outside %1").arg(isTemperature ? temperatureBandWords(film()) : humidityBandWords(film())));
    const auto spells =
        spellsOutside(*m_shop, roll(), measure, exposureSince(*m_shop, roll()), m_shop->now.instant).size();
    QString note = spells == 1  ? tr("1 spell since %1").arg(since(*m_shop, roll()))
                   : spells > 1 ? tr("%1 spells since %2").arg(spells).arg(since(*m_shop, roll()))
                                : tr("never since %1").arg(since(*m_shop, roll()));
    if (!isTemperature && std::lround(condition.temperatureHoursOutside) > 0)
        note = tr("and %1 outside %2")
                   .arg(hourCount(condition.temperatureHoursOutside), temperatureBandWords(film()));
    m_outside->set(hourCount(hours), note,
                   condition.isBadlyKept(film()) ? &Tokens::madder
                   : std::lround(hours) > 0      ? &Tokens::weld
                                                 : &Tokens::ink);
}

void RollPanel::showAdvice() {
    // That its work is to be cut first is said over that work.
    const bool isBanner = !m_advice.lead.isEmpty() && m_advice.act != RollAct::CutWork;
    m_banner->setVisible(isBanner);
    if (isBanner)
        m_banner->set(m_advice.tone, m_advice.lead, m_advice.text);
}

void RollPanel::showWork() {
    const RollForecast* forecast = m_shop->allotment.forecast(*m_roll);
    m_noWork->setText(forecast ? tr("No work waits for this roll.")
                               : tr("It is put away: no work is given to it."));
    const Millimetres allotted = forecast ? forecast->allotted : Millimetres{};
    m_bar->set(roll().left.value > 0
                   ? static_cast<double>(allotted.value) / static_cast<double>(roll().left.value)
                   : 0,
               colourOf(film().rgb));
    QString text =
        tr("<b>%1 of %2</b> spoken for")
            .arg(QLocale::c().toString(allotted.metres(), 'f', 1), metres(roll().left).toHtmlEscaped());
    const RollCondition& condition = m_shop->conditions.at(*m_roll);
    if (forecast && forecast->expectedWaste.value >= 50 && forecast->mayBeUsed && condition.useBy)
        text += tr(", about %1 wasted on %2")
                    .arg(metres(forecast->expectedWaste), dayInShort(*condition.useBy, m_shop->now.today()));
    else if (forecast && forecast->expectedWaste.value >= 50)
        text += tr(", %1 wasted as it is").arg(metres(forecast->expectedWaste));
    else if (forecast && condition.useBy)
        text += tr(", none likely wasted");
    m_spokenFor->setText(text);
}

void RollPanel::showActs() {
    const QString cannot = m_work.cannotCut();
    m_cut->setCannot(cannot);
    m_cut->setText(cannot.isEmpty() ? tr("Cut %1").arg(metres(m_work.tickedLength())) : tr("Cut these"));
    m_cut->setAccessibleName(tr("Cut these"));

    Button* first = m_reading;
    if (m_advice.act == RollAct::TestStrip)
        first = m_strip;
    else if (m_advice.act == RollAct::Move)
        first = m_move;
    else if (m_advice.act == RollAct::Recipe)
        first = m_recipe;
    else if (m_advice.act == RollAct::CutWork || (!m_advice.act && cannot.isEmpty()))
        first = m_cut;
    for (Button* button : {m_cut, m_reading, m_strip, m_move, m_recipe})
        button->setKind(button == first ? Button::Kind::Primary : Button::Kind::Plain);

    const bool isAway = roll().state == RollState::PutAway;
    m_away->setText(isAway ? tr("On the shelf") : tr("Put away"));
    const QString awayReason = isAway ? tr("It is put away; put it back on the shelf first.") : QString();
    for (Button* button : {m_strip, m_useUp})
        button->setCannot(awayReason);
}

void RollPanel::turnPage() {
    const bool isFirst = !m_showsLedger && m_advice.act == RollAct::CutWork;
    m_workTitle->setText(m_showsLedger ? tr("Ledger") : isFirst ? tr("To cut first") : tr("To cut"));
    m_workTitle->setInk(isFirst ? &Tokens::weld : &Tokens::ink);
    m_page->setText(m_showsLedger ? tr("To cut") : tr("Ledger"));
    if (m_showsLedger)
        readLedger();
    const bool hadFocus = m_workList->hasFocus() || m_ledgerList->hasFocus();
    m_pages->setCurrentIndex(m_showsLedger ? LedgerPage : m_work.rowCount() > 0 ? WorkPage : NoWorkPage);
    if (!hadFocus)
        return;
    if (m_pages->currentIndex() == NoWorkPage)
        emit shelfAsked();
    else
        m_pages->currentWidget()->setFocus(Qt::OtherFocusReason);
}

void RollPanel::readLedger() {
    if (!m_roll)
        return;
    auto moves = m_desk.file().read(
        [this](db::Connection& connection) { return db::lengthMovesOf(connection, *m_roll); });
    if (m_desk.done(moves))
        m_ledger.show(std::move(*moves), m_shop->now);
}

void RollPanel::cutTicked() {
    if (!m_roll)
        return;
    if (const QString cannot = m_work.cannotCut(); !cannot.isEmpty()) {
        m_desk.say(cannot);
        return;
    }
    const std::vector<DecalId> decals = m_work.tickedDecals();
    m_desk.done(db::cutDecals(m_desk.file(), *m_roll, decals, m_work.tickedLength()));
}

void RollPanel::putAway() {
    if (m_roll)
        m_desk.done(db::putRollAway(m_desk.file(), *m_roll, roll().state != RollState::PutAway));
}

} // namespace holdfast::app

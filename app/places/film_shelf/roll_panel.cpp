// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/roll_panel.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/climate_panel.h"
#include "app/places/film_shelf/first_words.h"
#include "app/places/film_shelf/roll_drawings.h"
#include "app/places/film_shelf/roll_facts.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/film_actions.h"

#include <QBoxLayout>
#include <QStackedWidget>

#include <cmath>

namespace holdfast::app {

namespace {

enum Page { WorkPage, NoWorkPage, LedgerPage };

constexpr int kQuietHeight = 32;

// "1.2 m (0.4 to 1.9 m)": eight of ten times it lies within.
QString wasteWords(const RollForecast& forecast) {
    const QString low = valueWords(Decimal{forecast.wasteLow.metres(), 1});
    const QString high = metres(forecast.wasteHigh);
    if (metres(forecast.wasteLow) == high)
        return metres(forecast.expectedWaste);
    return RollPanel::tr("%1 (%2 to %3)").arg(metres(forecast.expectedWaste), low, high);
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
    makeWork();
    auto* head = new QHBoxLayout;
    head->setSpacing(kSpace12);
    head->addWidget(m_swatch);
    auto* names = new QVBoxLayout;
    names->setSpacing(0);
    names->addWidget(m_name);
    names->addWidget(m_what);
    head->addLayout(names, 1);
    auto* workHead = new QHBoxLayout;
    workHead->setSpacing(kSpace4);
    workHead->addWidget(m_workTitle, 1);
    workHead->addWidget(m_airInFull);
    workHead->addWidget(m_page);
    workHead->addWidget(m_cut);
    auto* said = new QHBoxLayout;
    said->setSpacing(kSpace8);
    said->addWidget(m_spokenFor, 1);
    said->addWidget(m_whatIf, 0, Qt::AlignTop);

    QVBoxLayout* column = scroll->column();
    column->addLayout(head);
    column->addWidget(makeAbout(), 1);
    column->addLayout(workHead);
    column->addWidget(m_bar);
    column->addLayout(said);
    column->addWidget(m_pages, 1);
    whole->addWidget(new ThreadLine);
    whole->addWidget(makeActs());
    m_body->hide();
    connect(m_climate, &ClimatePanel::windowChosen, this, &RollPanel::windowChosen);
    connect(m_climate, &ClimatePanel::inFullAsked, this, &RollPanel::airAsked);
    connect(&m_work, &RollWorkModel::ticksChanged, this, [this] {
        if (!m_roll)
            return;
        showActs();
        if (m_work.isWhatIf())
            showWhatIf();
    });
}

QWidget* RollPanel::makeAbout() {
    m_about = new QWidget;
    m_about->setObjectName(QStringLiteral("aboutRoll"));
    m_facts = new RollFacts;
    m_climate = new ClimatePanel;
    auto* column = new QVBoxLayout(m_about);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    column->addWidget(m_banner);
    column->addWidget(new ThreadLine);
    column->addWidget(m_facts);
    column->addWidget(new ThreadLine);
    column->addWidget(m_climate, 1);
    column->addWidget(new ThreadLine);
    return m_about;
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

void RollPanel::makeWork() {
    m_workTitle = new Label({}, Type::BodyStrong);
    m_page = new Button({}, Button::Kind::Quiet);
    m_page->setObjectName(QStringLiteral("ledgerPage"));
    m_page->setKey(QKeySequence(Qt::Key_L));
    connect(m_page, &Button::clicked, this, [this] {
        m_showsLedger = !m_showsLedger;
        turnPage();
        emit keyboardLeft();
    });
    m_airInFull = new Button(tr("Air"), Button::Kind::Quiet);
    m_airInFull->setObjectName(QStringLiteral("airBesideLedger"));
    m_airInFull->setToolTip(tr("The air of its storage place in full, or the shelf again"));
    m_airInFull->showKey(QKeySequence(Qt::Key_G));
    connect(m_airInFull, &Button::clicked, this, &RollPanel::airAsked);
    m_cut = new Button(tr("Lay these out"));
    m_cut->setObjectName(QStringLiteral("cutThese"));
    m_cut->setKey(QKeySequence(Qt::Key_C));
    connect(m_cut, &Button::clicked, this, &RollPanel::takeTickedToBench);

    m_workList = new RollWorkList(m_work);
    connect(m_workList, &RollWorkList::turnedLeft, this, &RollPanel::keyboardLeft);
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
    m_whatIf = new Button(tr("What if"), Button::Kind::Quiet);
    m_whatIf->setObjectName(QStringLiteral("whatIf"));
    m_whatIf->setToolTip(tr("What if some work were cut from this roll and pressed first"));
    m_whatIf->setTargetHeight(kQuietHeight);
    m_whatIf->setKey(QKeySequence(Qt::Key_W));
    connect(m_whatIf, &Button::clicked, this, [this] { setWhatIf(!m_work.isWhatIf()); });
}

void RollPanel::setWhatIf(bool isWhatIf) {
    if (!m_roll || m_work.isWhatIf() == isWhatIf)
        return;
    m_showsLedger = false;
    m_work.setWhatIf(isWhatIf);
    showWork();
    showActs();
    turnPage();
    if (isWhatIf && m_work.rowCount() > 0)
        m_workList->setFocus(Qt::OtherFocusReason);
    else
        emit keyboardLeft();
}

void RollPanel::showWhatIf() {
    const std::vector<DecalId> chosen = m_work.tickedDecals();
    m_spokenFor->setText(
        firstWords(*m_shop, *m_roll, pressedFirst(*m_shop, *m_roll, chosen)).toHtmlEscaped());
}

bool RollPanel::goBack() {
    if (!m_roll || (!m_work.isWhatIf() && !m_showsLedger))
        return false;
    if (m_work.isWhatIf()) {
        setWhatIf(false);
        return true;
    }
    m_showsLedger = false;
    turnPage();
    emit keyboardLeft();
    return true;
}

Button* RollPanel::act(const QString& words, const QString& iconName, Qt::Key key, const char* name,
                       const std::function<void()>& done) {
    auto* button = new Button(words, iconName);
    button->setObjectName(QLatin1String(name));
    button->setKey(QKeySequence(key));
    connect(button, &Button::clicked, this, [this, done] {
        emit keyboardLeft();
        done();
    });
    return button;
}

QWidget* RollPanel::makeActs() {
    m_reading =
        act(tr("Record reading"), {}, Qt::Key_R, "recordReading", [this] { ask(SlipName::RecordReading); });
    m_import = act(tr("Import"), {}, Qt::Key_I, "importReadings", [this] { ask(SlipName::ImportReadings); });
    m_import->setAccessibleName(tr("Import readings"));
    m_import->setToolTip(tr("Import readings from a logger’s file"));
    m_strip = act(tr("Test strip"), {}, Qt::Key_T, "testStrip", [this] { ask(SlipName::TestStrip); });
    m_away = act(tr("Put away"), {}, Qt::Key_A, "putAway", [this] { putAway(); });
    m_move = act(tr("Move"), {}, Qt::Key_M, "moveRoll", [this] { ask(SlipName::RollMove); });
    m_useUp = act(tr("Use up"), {}, Qt::Key_U, "useUpRoll", [this] { ask(SlipName::UseUpRoll); });
    m_label = act(tr("Print label"), {}, Qt::Key_P, "printLabel", [this] { printLabel(); });
    m_recipe = act(tr("Recipe"), {}, Qt::Key_E, "recipe", [this] { ask(SlipName::Recipe); });
    m_film = act(tr("Film"), {}, Qt::Key_H, "filmSheet", [this] { ask(SlipName::FilmSheet); });
    m_film->setAccessibleName(tr("Change the film"));
    m_film->setToolTip(tr("Change what the film is, costs and suits, or retire it"));
    m_nextShade = act(tr("Next shade"), {}, Qt::Key_S, "nextShade", [this] { ask(SlipName::NextShade); });
    m_nextShade->setToolTip(tr("Add another shade of this finish, with the same limits and recipe"));

    auto* acts = new QWidget;
    auto* around = new QVBoxLayout(acts);
    around->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace12);
    auto* line = new QWidget;
    around->addWidget(line);
    auto* flow = new FlowLayout(line, kSpace8);
    for (Button* button :
         {m_reading, m_import, m_strip, m_move, m_away, m_useUp, m_recipe, m_label, m_film, m_nextShade}) {
        button->setTargetHeight(kQuietHeight);
        flow->addWidget(button);
    }
    return acts;
}

void RollPanel::ask(SlipName slip) {
    if (!m_roll)
        return;
    SlipTarget matter;
    matter.roll = m_roll;
    matter.film = roll().film;
    matter.place = roll().placeNow();
    emit m_desk.slipAsked(slip, matter);
}

void RollPanel::printLabel() {
    if (!m_roll)
        return;
    SlipTarget matter;
    matter.roll = m_roll;
    emit m_desk.paperAsked(PaperName::RollLabel, matter);
}

void RollPanel::show(RollId shown) {
    m_shop = m_desk.shop();
    m_roll = shown;
    m_advice = adviceFor(*m_shop, roll());
    m_body->show();
    showHead();
    m_facts->show(*m_shop, roll());
    showAdvice();
    m_climate->show(m_shop, shown);
    m_work.show(m_shop, shown);
    showWork();
    showActs();
    turnPage();
}

void RollPanel::clear() {
    m_roll.reset();
    m_showsLedger = false;
    m_work.clear();
    m_shop.reset();
    m_body->hide();
}

AirWindow RollPanel::window() const {
    return m_climate->window();
}

void RollPanel::takeNextWindow() {
    m_climate->takeNextWindow();
}

bool RollPanel::showsAir() const {
    return m_roll && !m_about->isHidden();
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

void RollPanel::showAdvice() {
    // That its work is to be cut first is said over that work.
    const bool isBanner = !m_advice.lead.isEmpty() && m_advice.act != RollAct::CutWork;
    m_banner->setVisible(isBanner);
    if (isBanner)
        m_banner->set(m_advice.tone, m_advice.lead, m_advice.text);
}

void RollPanel::showWork() {
    const RollForecast* forecast = m_shop->allotment.forecast(*m_roll);
    m_noWork->setText(!forecast           ? tr("It is put away: no work is given to it.")
                      : m_work.isWhatIf() ? tr("No work of this film waits.")
                                          : tr("No work waits for this roll."));
    const Millimetres allotted = forecast ? forecast->allotted : Millimetres{};
    m_bar->set(roll().left.value > 0
                   ? static_cast<double>(allotted.value) / static_cast<double>(roll().left.value)
                   : 0,
               colourOf(film().rgb));
    QString text = tr("<b>%1 of %2</b> spoken for")
                       .arg(valueWords(Decimal{allotted.metres(), 1}), metres(roll().left).toHtmlEscaped());
    const RollCondition& condition = m_shop->conditions.at(*m_roll);
    if (forecast && forecast->expectedWaste.value >= 50 && forecast->mayBeUsed && condition.useBy)
        text = tr("%1, by estimate %2 will go out of date on %3")
                   .arg(text, wasteWords(*forecast), dayInShort(*condition.useBy, m_shop->now.today()));
    else if (forecast && forecast->expectedWaste.value >= 50)
        text = tr("%1, %2 cannot be used as it is").arg(text, metres(forecast->expectedWaste));
    else if (forecast && condition.useBy)
        text = tr("%1, none likely to go out of date").arg(text);
    if (forecast && !forecast->pressEarly.empty() && condition.useBy)
        text = tr("%1. %n decal is promised for after its use-by|"
                  "%1. %n decals are promised for after its use-by",
                  nullptr, howMany(forecast->pressEarly.size()))
                   .arg(text);
    m_spokenFor->setText(text);
    m_whatIf->setText(m_work.isWhatIf() ? tr("Back") : tr("What if"));
    if (m_work.isWhatIf())
        showWhatIf();
}

void RollPanel::showActs() {
    const QString cannot = m_work.cannotCut();
    m_cut->setCannot(cannot);
    m_cut->setText(cannot.isEmpty() ? tr("Lay out %1").arg(metres(m_work.tickedLength()))
                                    : tr("Lay these out"));
    m_cut->setAccessibleName(tr("Lay these out"));
    m_cut->setAccessibleDescription(tr("Lays them on the cutting bench with this roll first."));

    Button* first = nullptr; // a roll with nothing to do has none
    if (m_advice.act == RollAct::RecordReading)
        first = m_reading;
    else if (m_advice.act == RollAct::TestStrip)
        first = m_strip;
    else if (m_advice.act == RollAct::Move)
        first = m_move;
    else if (m_advice.act == RollAct::Recipe)
        first = m_recipe;
    else if (m_advice.act == RollAct::CutWork || (!m_advice.act && cannot.isEmpty()))
        first = m_cut;
    for (Button* button : {m_cut, m_reading, m_strip, m_move, m_recipe})
        button->setKind(button == first ? Button::Kind::Primary : Button::Kind::Plain);
    for (Button* button : {m_reading, m_strip, m_move, m_recipe})
        button->setTargetHeight(kQuietHeight);

    const bool isAway = roll().state == RollState::PutAway;
    m_away->setText(isAway ? tr("On the shelf") : tr("Put away"));
    const QString awayReason = isAway ? tr("It is put away; put it back on the shelf first.") : QString();
    for (Button* button : {m_strip, m_useUp})
        button->setCannot(awayReason);
}

void RollPanel::turnPage() {
    const bool isFirst = !m_showsLedger && m_advice.act == RollAct::CutWork;
    m_workTitle->setText(m_work.isWhatIf() ? tr("What if these go first")
                         : m_showsLedger   ? tr("Ledger")
                         : isFirst         ? tr("To cut first")
                                           : tr("To cut"));
    m_bar->setVisible(!m_showsLedger && !m_work.isWhatIf());
    m_spokenFor->setVisible(!m_showsLedger && (!m_work.isWhatIf() || m_work.rowCount() > 0));
    m_whatIf->setVisible(!m_showsLedger && m_shop->allotment.forecast(*m_roll) != nullptr);
    m_cut->setVisible(!m_showsLedger && !m_work.isWhatIf());
    m_page->setVisible(!m_work.isWhatIf());
    m_workTitle->setInk(isFirst ? &Tokens::weld : &Tokens::ink);
    m_page->setText(m_showsLedger ? tr("To cut") : tr("Ledger"));
    if (m_showsLedger)
        readLedger();
    // Both have the panel to themselves, so that the answer and the moves are in view.
    const bool isAlone = m_showsLedger || m_work.isWhatIf();
    m_about->setVisible(!isAlone);
    m_airInFull->setVisible(isAlone);
    m_workList->setFills(isAlone);
    const bool hadFocus = m_workList->hasFocus() || m_ledgerList->hasFocus();
    m_pages->setCurrentIndex(m_showsLedger ? LedgerPage : m_work.rowCount() > 0 ? WorkPage : NoWorkPage);
    if (hadFocus && m_pages->currentIndex() == NoWorkPage)
        emit keyboardLeft();
}

void RollPanel::readLedger() {
    if (!m_roll)
        return;
    auto moves = m_desk.file().read(
        [this](db::Connection& connection) { return db::lengthMovesOf(connection, *m_roll); });
    if (m_desk.done(moves))
        m_ledger.show(std::move(*moves), m_shop->now);
}

void RollPanel::takeTickedToBench() {
    if (!m_roll || m_work.isWhatIf())
        return;
    if (const QString cannot = m_work.cannotCut(); !cannot.isEmpty()) {
        m_desk.say(cannot);
        return;
    }
    SlipTarget matter;
    matter.roll = *m_roll;
    matter.film = roll().film;
    matter.decals = m_work.tickedDecals();
    emit m_desk.placeAsked(PlaceName::CuttingBench, matter);
}

void RollPanel::putAway() {
    if (m_roll)
        m_desk.done(db::putRollAway(m_desk.file(), *m_roll, roll().state != RollState::PutAway));
}

} // namespace holdfast::app

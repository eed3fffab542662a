// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/film_shelf_place.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/air_card.h"
#include "app/places/film_shelf/roll_panel.h"
#include "app/places/film_shelf/shelf_view.h"
#include "app/slips/pick_list.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/chip.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "db/actions/film_actions.h"

#include <QBoxLayout>
#include <QKeyEvent>
#include <QShortcut>
#include <QStackedWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kPanelWidth = 396; // its acts in three lines
constexpr int kTitleHeight = 52;
constexpr int kLeastChoice = 120;
constexpr int kMostChoice = 196;
constexpr int kFewReadings = 500; // are removed before a window seems to hang
constexpr int kRoomForNote = 680; // of the shelf, below its title and tools
constexpr int kRoomForLongNote = 940;
constexpr int kRoomForTitle = 560;
constexpr int kRoomForChoice = 800; // in which a film's name is read whole
constexpr int kRoomForLength = 840; // of the place, for all its tools in the header
// One above the other in a low window: then the place scrolls.
constexpr int kLowestShelf = 240;
constexpr int kLowestPanel = 320;

bool isOnShelf(const FilmRoll& roll) {
    return roll.state == RollState::OnShelf;
}

} // namespace

FilmShelfPlace::FilmShelfPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("filmShelf"));
    auto* shelfAndRoll = new QWidget;
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, shelfAndRoll);
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(kCardGap);
    m_left = new QStackedWidget;
    m_left->addWidget(makeShelf());
    m_air = new AirCard;
    m_left->addWidget(m_air);
    m_row->addWidget(m_left, 1);
    m_panel = new RollPanel(desk());
    m_row->addWidget(m_panel);

    m_empty =
        new EmptyState(QStringLiteral("film-shelf"),
                       tr("Rolls of film are shown here once the first is received."), tr("Receive a roll"));
    m_empty->setObjectName(QStringLiteral("emptyShelf"));
    m_empty->setKey(QKeySequence(Qt::Key_N));
    connect(m_empty, &EmptyState::acted, this, &FilmShelfPlace::askNewRoll);
    m_pages = new QStackedWidget;
    m_pages->addWidget(shelfAndRoll);
    m_emptyCard = new Card;
    m_emptyCard->content()->addWidget(m_empty);
    m_pages->addWidget(m_emptyCard);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    whole->addWidget(m_pages);

    connect(m_shelf, &ShelfView::turnedRight, m_panel, &RollPanel::turnToWork);
    connect(m_panel, &RollPanel::keyboardLeft, this, &FilmShelfPlace::takeKeyboard);
    connect(m_panel, &RollPanel::airAsked, this, [this] { showAir(m_left->currentWidget() != m_air); });
    connect(m_panel, &RollPanel::windowChosen, this, [this] { showAir(m_left->currentWidget() == m_air); });
    connect(m_air, &AirCard::left, this, [this] { showAir(false); });
    connect(m_air, &AirCard::nextWindowAsked, m_panel, &RollPanel::takeNextWindow);
    makeAirKeys();
    connect(m_air, &AirCard::correctionAsked, this, &FilmShelfPlace::askCorrection);
    connect(m_air, &AirCard::removalAsked, this, &FilmShelfPlace::removeReadings);
    connect(m_shelf->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this] { showRoll(); });
    connect(&desk(), &ShopDesk::changed, this, &FilmShelfPlace::refresh);
    connect(&desk(), &ShopDesk::minutePassed, this, &FilmShelfPlace::refresh);
}

// Each is on more than one button; a key that two buttons heard would be nobody's.
void FilmShelfPlace::makeAirKeys() {
    connect(new QShortcut(Qt::Key_D, this), &QShortcut::activated, this, [this] {
        const bool isInFull = m_left->currentWidget() == m_air && m_air->showsFigures();
        if (m_panel->showsAir() || isInFull)
            m_panel->takeNextWindow();
    });
    connect(new QShortcut(Qt::Key_G, this), &QShortcut::activated, m_panel, &RollPanel::airAsked);
}

QWidget* FilmShelfPlace::makeShelf() {
    m_card = new Card(tr("Use first, top down"));
    m_card->setTitleHeight(kTitleHeight);
    m_films = new PickList(tr("Which film"));
    m_films->setObjectName(QStringLiteral("filmChoice"));
    m_films->setMinimumWidth(kLeastChoice);
    m_films->setMaximumWidth(kMostChoice);
    connect(m_films, &QComboBox::activated, this, [this](int at) {
        choose(m_choices[static_cast<std::size_t>(at)]);
        if (!m_films->isTyping())
            takeKeyboard();
    });
    auto* key = new KeyHint(tr("Film"), QKeySequence(Qt::Key_F));
    key->jumpTo(m_films);
    m_card->addToTitle(key);
    m_card->addToTitle(m_films);
    auto* newRoll = new Button(tr("Receive a roll"), QStringLiteral("plus"), Button::Kind::Quiet);
    newRoll->setObjectName(QStringLiteral("newRoll"));
    newRoll->setKey(QKeySequence(Qt::Key_N));
    connect(newRoll, &Button::clicked, this, &FilmShelfPlace::askNewRoll);
    m_card->addToTitle(newRoll);

    m_shelf = new ShelfView(m_model);
    m_none = new EmptyState(QStringLiteral("film-shelf"), {}, tr("Show all films"));
    m_none->showKey(QKeySequence(Qt::Key_Return));
    m_none->setObjectName(QStringLiteral("noneOfFilm"));
    connect(m_none, &EmptyState::acted, this, [this] {
        choose({});
        takeKeyboard();
    });
    m_boards = new QStackedWidget;
    m_boards->addWidget(m_shelf);
    m_boards->addWidget(m_none);
    m_card->content()->addWidget(m_boards, 1);
    return m_card;
}

QString FilmShelfPlace::subtitle() const {
    return longDay(desk().now().today());
}

QWidget* FilmShelfPlace::headerTools() {
    if (!m_tools) {
        m_tools = new QWidget;
        auto* row = new FlowLayout(m_tools, kSpace16);
        m_past = new Chip(QStringLiteral("hold"), {}, Tone::Held);
        m_past->setObjectName(QStringLiteral("pastChip"));
        m_badlyKept = new Chip(QStringLiteral("hold"), {}, Tone::Held);
        m_badlyKept->setObjectName(QStringLiteral("badlyKeptChip"));
        m_failed = new Chip(QStringLiteral("hold"), {}, Tone::Held);
        m_failed->setObjectName(QStringLiteral("stripFailedChip"));
        m_soon = new Chip(QStringLiteral("caution"), {}, Tone::Caution);
        m_soon->setObjectName(QStringLiteral("soonChip"));
        m_length = new Label({}, Type::Body, &Tokens::ink2);
        m_length->setObjectName(QStringLiteral("shelfLength"));
        m_length->setTextFormat(Qt::RichText);
        for (QWidget* tool : {static_cast<QWidget*>(m_past), static_cast<QWidget*>(m_badlyKept),
                              static_cast<QWidget*>(m_failed), static_cast<QWidget*>(m_soon),
                              static_cast<QWidget*>(m_length)})
            row->addWidget(tool);
        countTools();
    }
    return m_tools;
}

void FilmShelfPlace::opened() {
    if (m_isStale)
        refresh();
    takeKeyboard();
}

void FilmShelfPlace::takeKeyboard() {
    if (m_pages->currentWidget() == m_emptyCard)
        m_empty->setFocus(Qt::OtherFocusReason);
    else if (m_left->currentWidget() == m_air)
        m_air->takeKeyboard();
    else if (m_boards->currentWidget() == m_none)
        m_none->setFocus(Qt::OtherFocusReason);
    else
        m_shelf->setFocus(Qt::OtherFocusReason);
}

// As narrow as one of the two alone, for then the roll goes below the shelf.
QSize FilmShelfPlace::minimumSizeHint() const {
    const int shelf = std::min(m_left->minimumSizeHint().width(), kRoomForTitle);
    return {std::max(shelf, m_panel->minimumSizeHint().width()) + 2 * kGutter,
            layout()->minimumSize().height()};
}

void FilmShelfPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

// Where a window is too narrow for both side by side, the roll goes below the shelf.
void FilmShelfPlace::arrange() {
    const int panelWidth = std::max(kPanelWidth, m_panel->minimumSizeHint().width());
    const int shelfWidth = width() - 2 * kGutter - kCardGap - panelWidth;
    m_card->setTitle(shelfWidth >= kRoomForTitle ? tr("Use first, top down") : tr("Use first"));
    m_card->setNote(shelfWidth >= kRoomForLongNote ? tr("tail is days left, stitch its range, roll is metres")
                    : shelfWidth >= kRoomForNote   ? tr("tail is days left, roll is metres")
                                                   : QString());
    m_films->setMinimumWidth(shelfWidth >= kRoomForChoice ? kMostChoice : kLeastChoice);
    const bool isStacked = shelfWidth < m_card->minimumSizeHint().width();
    m_row->setDirection(isStacked ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_row->setStretchFactor(m_panel, isStacked ? 1 : 0);
    m_left->setMinimumHeight(isStacked ? kLowestShelf : 0);
    m_panel->setMinimumHeight(isStacked ? kLowestPanel : 0);
    m_panel->setMinimumWidth(isStacked ? 0 : panelWidth);
    m_panel->setMaximumWidth(isStacked ? QWIDGETSIZE_MAX : panelWidth);
    showLength();
}

// Where the header has not the room for all its tools, the length goes first.
void FilmShelfPlace::showLength() {
    if (m_length)
        m_length->setVisible(m_hasRolls && width() >= kRoomForLength);
}

void FilmShelfPlace::turnTo(const SlipTarget& matter) {
    if (m_isStale)
        refresh();
    if (matter.roll)
        turnToRoll(*matter.roll);
    else if (matter.film)
        choose({.film = matter.film});
}

bool FilmShelfPlace::takeScan(const SlipTarget& matter) {
    if (!matter.roll)
        return false;
    turnTo(matter);
    const FilmRoll* found = desk().shop()->facts.rolls.find(*matter.roll);
    if (!found || found->state == RollState::UsedUp)
        desk().say(found ? tr("%1 is used up.").arg(words(found->label())) : tr("That roll is used up."));
    takeKeyboard();
    return true;
}

void FilmShelfPlace::askNewRoll() {
    SlipTarget matter;
    matter.film = m_choice.film;
    emit desk().slipAsked(SlipName::ReceiveRoll, matter);
}

void FilmShelfPlace::refresh() {
    if (!isVisible() && !m_isStale) {
        m_isStale = true;
        return;
    }
    const bool isLookedAt = !m_isStale;
    m_isStale = false;
    fillChoices();
    showShelf();
    noteRolls(isLookedAt);
    countTools();
    emit subtitleChanged();
}

// Films that have a roll on the shelf, by name; and what was put away.
void FilmShelfPlace::fillChoices() {
    const ShopFacts& facts = desk().shop()->facts;
    struct OnShelf {
        const Film* film;
        int rolls;
    };
    std::vector<OnShelf> films;
    int putAway = 0;
    for (const Film& film : facts.films) {
        const auto rolls = std::ranges::count_if(
            facts.rolls, [&](const FilmRoll& roll) { return roll.film == film.id && isOnShelf(roll); });
        if (rolls > 0 || m_choice.film == film.id)
            films.push_back({&film, static_cast<int>(rolls)});
    }
    for (const FilmRoll& roll : facts.rolls)
        putAway += roll.state == RollState::PutAway ? 1 : 0;
    std::ranges::sort(films, {}, [](const OnShelf& each) { return each.film->name(); });

    m_choices = {{}};
    QVector<PickItem> items{{tr("All films")}};
    for (const OnShelf& each : films) {
        m_choices.push_back({.film = each.film->id});
        items.append({tr("%1 (%2)").arg(words(each.film->name())).arg(each.rolls), colourOf(each.film->rgb)});
    }
    if (putAway > 0 || m_choice.isPutAway) {
        m_choices.push_back({.film = {}, .isPutAway = true});
        items.append({tr("Put away (%1)").arg(putAway)});
    }
    const auto chosen = std::ranges::find(m_choices, m_choice);
    if (chosen == m_choices.end())
        m_choice = {};
    m_films->setItems(items, chosen == m_choices.end() ? 0 : static_cast<int>(chosen - m_choices.begin()));
}

void FilmShelfPlace::showShelf() {
    const auto& shop = desk().shop();
    const bool hasRolls = std::ranges::any_of(
        shop->facts.rolls, [](const FilmRoll& roll) { return roll.state != RollState::UsedUp; });
    m_pages->setCurrentIndex(hasRolls ? 0 : 1);

    const QModelIndex current = m_shelf->currentIndex();
    const int before = current.row();
    const std::optional<RollId> roll =
        current.isValid() ? std::optional{m_model.row(before).roll} : std::nullopt;
    {
        const QSignalBlocker quiet(m_shelf->selectionModel());
        m_model.show(shop, m_choice);
    }
    const int rows = m_model.rowCount();
    m_boards->setCurrentIndex(rows > 0 ? 0 : 1);
    if (rows == 0) {
        const Film* film = m_choice.film ? shop->facts.films.find(*m_choice.film) : nullptr;
        m_none->setSentence(m_choice.isPutAway ? tr("No roll is put away.")
                            : film             ? tr("No roll of %1 is on the shelf.").arg(words(film->name()))
                                               : tr("No roll is on the shelf; some are put away."));
        m_none->setAction(m_choice == ShelfChoice{} ? QString() : tr("Show all films"));
        m_panel->clear();
        return;
    }
    const int found = roll ? m_model.rowOf(*roll) : -1;
    {
        const QSignalBlocker quiet(m_shelf->selectionModel());
        m_shelf->setCurrentIndex(m_model.index(found >= 0 ? found : std::clamp(before, 0, rows - 1)));
    }
    m_shelf->viewport()->update();
    showRoll();
}

// A roll that came while the shelf is looked at was just received here: it is the one to go on with.
void FilmShelfPlace::noteRolls(bool isLookedAt) {
    std::vector<RollId> added;
    for (const FilmRoll& roll : desk().shop()->facts.rolls)
        if (m_known.insert(roll.id).second)
            added.push_back(roll.id);
    if (isLookedAt && added.size() == 1)
        turnToRoll(added.front());
}

void FilmShelfPlace::showRoll() {
    const QModelIndex current = m_shelf->currentIndex();
    if (current.isValid())
        m_panel->show(m_model.row(current.row()).roll);
    m_shelf->viewport()->update();
    showAir(m_left->currentWidget() == m_air && current.isValid());
}

// The air of the roll's place in full is shown where the shelf was.
void FilmShelfPlace::showAir(bool isShown) {
    const QModelIndex current = m_shelf->currentIndex();
    if (isShown && current.isValid())
        m_air->show(desk().shop(), m_model.row(current.row()).roll, m_panel->window());
    const bool wasShown = m_left->currentWidget() == m_air;
    m_left->setCurrentIndex(isShown && current.isValid() ? 1 : 0);
    if (wasShown != (m_left->currentWidget() == m_air))
        takeKeyboard();
}

void FilmShelfPlace::askCorrection(PlaceId place, Instant at) {
    SlipTarget matter;
    matter.place = place;
    matter.at = at;
    emit desk().slipAsked(SlipName::CorrectReading, matter);
}

void FilmShelfPlace::removeReadings(PlaceId place, Instant first, Instant last, int count) {
    if (count <= kFewReadings || desk().file().path().empty()) {
        desk().done(db::removeReadings(desk().file(), place, first, last));
        return;
    }
    desk().doBeside(tr("Removing readings"),
                    [=](db::Shop& shop, const std::function<bool(double)>& progress) -> Result<std::string> {
                        const auto removed = db::removeReadings(shop, place, first, last, progress);
                        if (!removed.ok())
                            return removed.error();
                        return plain(
                            tr("%1 reading removed.|%1 readings removed.", nullptr, howMany(*removed))
                                .arg(valueWords(*removed)));
                    });
}

void FilmShelfPlace::keyPressEvent(QKeyEvent* event) {
    const bool isDone =
        event->key() == Qt::Key_Escape || event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (isDone && m_films->hasFocus())
        takeKeyboard();
    else if (event->key() == Qt::Key_Escape && m_left->currentWidget() == m_air)
        showAir(false);
    else if (event->key() != Qt::Key_Escape || !m_panel->goBack())
        Place::keyPressEvent(event);
}

void FilmShelfPlace::countTools() {
    if (!m_tools)
        return;
    const auto& shop = desk().shop();
    const LocalDate today = shop->now.today();
    int past = 0;
    int badlyKept = 0;
    int failed = 0;
    int soon = 0;
    int rolls = 0;
    Millimetres length;
    for (const FilmRoll& roll : shop->facts.rolls) {
        if (!isOnShelf(roll))
            continue;
        ++rolls;
        length += roll.left;
        const RollCondition& condition = shop->conditions.at(roll.id);
        if (condition.stripFailed)
            ++failed;
        else if (condition.isPastAge(today))
            ++past;
        else if (condition.isBadlyKept(shop->facts.films.at(roll.film)))
            ++badlyKept;
        else if (condition.useBy && *condition.useBy - today <= kSoon)
            ++soon;
    }
    m_past->set(QStringLiteral("hold"), tr("%n past use-by", nullptr, howMany(past)), Tone::Held);
    m_past->setVisible(past > 0);
    m_badlyKept->set(QStringLiteral("hold"), tr("%n badly stored", nullptr, howMany(badlyKept)), Tone::Held);
    m_badlyKept->setVisible(badlyKept > 0);
    m_failed->set(QStringLiteral("hold"),
                  tr("%n failed its strip|%n failed their strips", nullptr, howMany(failed)), Tone::Held);
    m_failed->setVisible(failed > 0);
    m_soon->set(QStringLiteral("caution"), tr("%n to use this month", nullptr, howMany(soon)), Tone::Caution);
    m_soon->setVisible(soon > 0);
    m_length->setText(
        tr("<b>%1</b> on %n roll|<b>%1</b> on %n rolls", nullptr, howMany(rolls)).arg(metres(length)));
    m_hasRolls = rolls > 0;
    showLength();
}

void FilmShelfPlace::choose(const ShelfChoice& choice) {
    m_choice = choice;
    fillChoices();
    showShelf();
}

// A roll that the choice hides is looked for among all, then among those put away.
void FilmShelfPlace::turnToRoll(RollId roll) {
    for (const ShelfChoice& choice : {m_choice, ShelfChoice{}, ShelfChoice{.film = {}, .isPutAway = true}}) {
        if (m_model.rowOf(roll) >= 0)
            break;
        choose(choice);
    }
    if (const int row = m_model.rowOf(roll); row >= 0) {
        m_shelf->setCurrentIndex(m_model.index(row));
        m_shelf->scrollTo(m_model.index(row), QAbstractItemView::PositionAtCenter);
    }
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/press_walk_place.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/current_garment.h"
#include "app/places/press_walk/day_strip.h"
#include "app/places/press_walk/late_words.h"
#include "app/places/press_walk/promised_aside.h"
#include "app/places/press_walk/walk_notice.h"
#include "app/places/press_walk/walk_tools.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/label.h"
#include "app/widgets/sewn_tabs.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QListView>
#include <QScrollBar>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kCountingTick = 100;
constexpr int kClockTick = 1000;
constexpr int kHeldFor = 1000;
constexpr int kNoteStays = 6000;

} // namespace

PressWalkPlace::PressWalkPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("pressWalk"));
    m_tools = new WalkTools(this);
    connect(m_tools, &WalkTools::daySheetAsked, this, &PressWalkPlace::printDaySheet);
    m_tools->hide();

    QWidget* page = makePage();
    m_empty = new EmptyState(QStringLiteral("press-walk"),
                             tr("The day’s garments are shown here once an order has any to press: in runs "
                                "from low heat to high, each with its steps and seconds."),
                             tr("Take an order"));
    m_empty->setObjectName(QStringLiteral("walkEmpty"));
    m_empty->showKey(QKeySequence(Qt::CTRL | Qt::Key_1));
    auto* emptyCard = new Card;
    emptyCard->content()->addWidget(m_empty);
    m_emptyPage = new QWidget;
    auto* emptyRoom = new QVBoxLayout(m_emptyPage);
    emptyRoom->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    emptyRoom->addWidget(emptyCard);
    m_pages = new QStackedWidget;
    m_pages->addWidget(page);
    m_pages->addWidget(m_emptyPage);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_pages);

    m_held.setSingleShot(true);
    m_held.setInterval(kHeldFor);
    m_noteEnds.setSingleShot(true);
    m_noteEnds.setInterval(kNoteStays);
    listen();
}

PressWalkPlace::~PressWalkPlace() {
    qApp->removeEventFilter(this);
}

void PressWalkPlace::listen() {
    connect(&desk(), &ShopDesk::changed, this, [this] {
        m_note.clear(); // it was about what was there before
        refresh();
    });
    for (const auto told : {&ShopDesk::minutePassed, &ShopDesk::replanned}) {
        connect(&desk(), told, this, [this] {
            // While the walk is paused the times in the list stop.
            if (!m_isPaused)
                refresh();
        });
    }
    connect(&m_tick, &QTimer::timeout, this, &PressWalkPlace::tick);
    connect(&m_noteEnds, &QTimer::timeout, this, [this] { note({}); });
    connect(&m_held, &QTimer::timeout, this, [this] {
        m_heldIsDone = true;
        if (const auto act = std::exchange(m_heldAct, {}))
            act();
    });
    listenToKeys();
    connect(m_list, &QListView::activated, this, [this](const QModelIndex& index) {
        if (const auto garment = m_model.garmentAt(index))
            turnToGarment(*garment);
    });
    connect(m_rack, &RackList::takenUp, this, [this](GarmentId garment) { takeFromRack(garment); });
    connect(m_tabs, &SewnTabs::chosen, this, [this](int at) { showSide(static_cast<Side>(at)); });
    connect(m_late, &QAbstractButton::clicked, this, &PressWalkPlace::toggleStrip);
    connect(m_promised, &QAbstractButton::clicked, this, &PressWalkPlace::turnToPromised);
    connect(m_aside, &AsideList::freed, this, &PressWalkPlace::freeCurrent);
    connect(m_aside, &AsideList::waived, this, &PressWalkPlace::waiveCurrent);
    connect(m_aside, &QListView::activated, this, &PressWalkPlace::freeCurrent);
    connect(m_empty, &EmptyState::acted, this, [this] { emit desk().placeAsked(PlaceName::FairTable, {}); });
}

void PressWalkPlace::listenToKeys() {
    connect(m_next, &QPushButton::pressed, this, [this] {
        m_heldIsDone = false;
        if (mustBeHeld() && !isStopped())
            hold([this] { nextNow(); }, {});
    });
    connect(m_next, &QPushButton::clicked, this, [this] {
        release();
        if (!std::exchange(m_heldIsDone, false))
            next();
    });
    connect(m_next, &QPushButton::released, this, [this] { release(); });
    connect(m_back, &QPushButton::clicked, this, &PressWalkPlace::backAStep);
    connect(m_hold, &QPushButton::clicked, this, &PressWalkPlace::offerHold);
    connect(m_pause, &QPushButton::clicked, this, [this] { setPaused(!m_isPaused); });
    connect(m_spoil, &QPushButton::clicked, this, &PressWalkPlace::askSpoil);
    connect(m_unbegin, &QPushButton::clicked, this, &PressWalkPlace::backOnTheWalk);
    connect(m_goOn, &QPushButton::clicked, this, [this] {
        m_isHoldOffered = false;
        showKeys();
        m_next->setFocus();
    });
    connect(m_pressedOn, &QPushButton::clicked, this, &PressWalkPlace::pressedOn);
    connect(m_spoiledByHeat, &QPushButton::clicked, this, &PressWalkPlace::spoiledByHeat);
    connect(m_putBack, &QPushButton::clicked, this, &PressWalkPlace::putBack);
    connect(m_showsStrip, &QPushButton::clicked, this, &PressWalkPlace::toggleStrip);
    connect(m_panel->restart(), &QPushButton::clicked, this, &PressWalkPlace::countAgain);
}

QString PressWalkPlace::subtitle() const {
    return longDay(desk().now().today());
}

QWidget* PressWalkPlace::headerTools() {
    m_tools->show(m_walk, desk().now());
    m_tools->setVisible(true);
    return m_tools;
}

void PressWalkPlace::opened() {
    refresh();
    if (m_isStale)
        showWalk();
    takeKeyboard();
}

void PressWalkPlace::takeKeyboard() {
    if (m_pages->currentWidget() == m_emptyPage)
        m_empty->setFocus();
    else if (m_keys->currentWidget()->isAncestorOf(m_pressedOn))
        m_pressedOn->setFocus();
    else if (m_next->isEnabled())
        m_next->setFocus();
    else if (m_isPaused)
        m_pause->setFocus();
    else // a key that cannot be pressed takes no keyboard, and letters would reach nobody
        (m_aside->isVisible() ? static_cast<QWidget*>(m_aside) : m_list)->setFocus();
}

void PressWalkPlace::turnTo(const SlipTarget& matter) {
    refresh();
    if (m_isStale)
        showWalk();
    if (!matter.garment)
        return;
    if (const QModelIndex index = m_model.indexOf(*matter.garment); index.isValid()) {
        showSide(Side::Walk);
        m_list->setCurrentIndex(index);
        m_list->scrollTo(index);
        m_list->setFocus();
        return;
    }
    showSide(Side::Aside);
    m_aside->turnTo(*matter.garment);
}

void PressWalkPlace::showEvent(QShowEvent* event) {
    Place::showEvent(event);
    qApp->installEventFilter(this);
    if (m_isStale)
        refresh();
    else
        tick();
}

void PressWalkPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

void PressWalkPlace::hideEvent(QHideEvent* event) {
    Place::hideEvent(event);
    qApp->removeEventFilter(this);
    release();
    m_tick.stop();
}

void PressWalkPlace::refresh() {
    m_shop = desk().shop();
    if (isVisible())
        showWalk();
    else
        m_isStale = true;
}

void PressWalkPlace::showWalk() {
    m_isStale = false;
    m_walk = desk().walk();
    if (m_chosen && !isOnPress(*m_chosen))
        m_chosen.reset();
    m_inHand = m_chosen ? m_chosen : m_walk.onPress;
    m_isHoldOffered = m_isHoldOffered && m_inHand;

    m_pages->setCurrentIndex(m_walk.isEmpty() ? 1 : 0);
    showList();

    m_aside->show(m_shop, m_walk.aside);
    m_aside->setVisible(!m_walk.aside.empty());
    m_asideEmpty->setVisible(m_walk.aside.empty());
    const PromisedAside promised = promisedAside(*m_shop, m_walk);
    m_promised->show(promised.what, promised.frees);
    m_late->show(lateInShort(*m_shop, m_walk), {});
    showTabs();
    m_asideCard->setCount(m_walk.aside.empty() ? QString() : QString::number(m_walk.aside.size()));
    m_strip->show(m_shop, m_walk);
    m_tools->show(m_walk, m_shop->now);
    emit subtitleChanged();

    m_current->show(m_shop, shownGarment());
    tick();
}

// It stays where it was pushed to, and turns to the garment that is shown when that becomes another: with
// what was before it and what comes after it.
void PressWalkPlace::showList() {
    const auto selected = m_model.garmentAt(m_list->currentIndex());
    const int offset = m_list->verticalScrollBar()->value();
    m_model.show(m_shop, m_walk);
    m_model.setInHand(m_inHand);
    m_list->setVisible(!m_walk.runs.empty());
    m_nothingReady->setVisible(m_walk.runs.empty());
    if (selected)
        m_list->setCurrentIndex(m_model.indexOf(*selected));
    m_list->doItemsLayout();
    m_list->verticalScrollBar()->setValue(offset);
    const auto shown = shownGarment();
    if (shown && shown != m_shownInList)
        m_list->scrollTo(m_model.indexOf(*shown), QAbstractItemView::PositionAtCenter);
    m_shownInList = shown;
}

void PressWalkPlace::tick() {
    if (!isVisible())
        return;
    if (m_isNoteOfCount && !mustBeHeld())
        note({});
    m_tools->setClock(clock(desk().now().local()));
    showGarment();
    showPanel();
    showRack();
    showKeys();
    showNext();
    m_tick.start(counts().isEmpty() ? kClockTick : kCountingTick);
}

void PressWalkPlace::showGarment() {
    if (m_shop && m_current->garment() != shownGarment())
        m_current->show(m_shop, shownGarment());
}

void PressWalkPlace::showKeys() {
    m_keys->setCurrentIndex(isTooLong() ? 2 : m_isHoldOffered ? 1 : 0);
    m_pause->setText(m_isPaused ? tr("Go on with walk") : tr("Pause walk"));
}

} // namespace holdfast::app

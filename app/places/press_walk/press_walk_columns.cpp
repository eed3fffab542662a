// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of Press walk: the walk, the garment in hand with its keys, the rack, and what is aside.
#include "app/places/press_walk/press_walk_place.h"

#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/current_garment.h"
#include "app/places/press_walk/day_strip.h"
#include "app/places/press_walk/walk_delegate.h"
#include "app/places/press_walk/walk_list.h"
#include "app/places/press_walk/walk_notice.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/filling_page.h"
#include "app/widgets/label.h"
#include "app/widgets/sewn_tabs.h"
#include "app/widgets/vertical_scroll.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QListView>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kCentreGap = 8;
constexpr int kFootTarget = 44;

} // namespace

QWidget* PressWalkPlace::makePage() {
    auto* page = new FillingPage;
    m_strip = new DayStrip;
    m_strip->hide();
    m_tabs = new SewnTabs(tr("What is shown next to the garment"), page);
    m_tabs->setObjectName(QStringLiteral("walkTabs"));
    m_columns = new QGridLayout;
    m_columns->setHorizontalSpacing(kCardGap);
    m_columns->setVerticalSpacing(0);
    makeWalk();
    m_centre = makeCentre();
    makeRack();
    makeAside();
    m_foot = makeFoot();
    auto* whole = new QVBoxLayout(page);
    whole->setContentsMargins(kGutter, 0, kGutter, 1);
    whole->setSpacing(0);
    whole->addWidget(m_strip);
    whole->addLayout(m_columns, 1);
    whole->addSpacing(3);
    whole->addWidget(m_foot);

    // Where the window is too small for all of it, the whole of it scrolls.
    m_scroll = new VerticalScroll;
    m_scroll->setObjectName(QStringLiteral("walkScroll"));
    m_scroll->column()->addWidget(page, 1);
    // It is arranged by the room there is, so it asks for none.
    m_scroll->setMinimumWidth(1);
    return m_scroll;
}

QWidget* PressWalkPlace::makeFoot() {
    auto* foot = new QWidget;
    auto* caution =
        new Label(tr("Platens burn: keep hands and cords clear. Ventilate, and keep to the film’s safety "
                     "data sheet. Electrics are for a licensed electrician."),
                  Type::Small, &Tokens::ink3);
    caution->setObjectName(QStringLiteral("walkCaution"));
    caution->wrapped();
    m_showsStrip = new Button(tr("The day as a strip"), Button::Kind::Quiet);
    m_showsStrip->setObjectName(QStringLiteral("showDayStrip"));
    m_showsStrip->showKey(Qt::Key_S);
    m_showsStrip->setTargetHeight(kFootTarget);
    m_showsStrip->setFocusPolicy(Qt::NoFocus);
    auto* row = new QHBoxLayout(foot);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(caution, 1);
    row->addWidget(m_showsStrip);
    return foot;
}

void PressWalkPlace::makeWalk() {
    m_walkCard = new Card;
    m_late = new WalkNotice(Qt::Key_S);
    m_late->setObjectName(QStringLiteral("lateNotice"));
    m_list = new WalkList(m_model);
    m_list->setObjectName(QStringLiteral("walkList"));
    m_list->setAccessibleName(tr("The walk, in heat runs"));
    m_list->setModel(&m_model);
    m_list->setItemDelegate(new WalkDelegate(m_model, m_list));
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    giveNoFocusRing(m_list);
    m_nothingReady = new EmptyState(
        QStringLiteral("press-walk"),
        tr("Nothing is ready to press. Each card at the right says what it waits for."), QString());
    m_nothingReady->setObjectName(QStringLiteral("walkNothingReady"));
    m_walkCard->content()->addWidget(m_late);
    m_walkCard->content()->addWidget(m_list, 1);
    m_walkCard->content()->addWidget(m_nothingReady, 1);
}

QWidget* PressWalkPlace::makeCentre() {
    auto* centre = new QWidget;
    m_current = new CurrentGarment;
    m_panel = new CountPanel;
    m_next = new Button(QString(), Button::Kind::Next);
    m_next->setObjectName(QStringLiteral("nextStep"));
    m_next->showKey(Qt::Key_Space);
    m_next->setTargetHeight(kNextTarget);
    auto* column = new QVBoxLayout(centre);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(kCentreGap);
    column->addWidget(m_current, 1);
    column->addWidget(m_panel);
    column->addWidget(m_next);
    column->addWidget(makeKeys());
    return centre;
}

Button* PressWalkPlace::makeKey(const QString& words, const QString& iconName, Qt::Key key,
                                const QString& name) {
    auto* button = new Button(words, iconName);
    button->mayShrink();
    button->setTargetHeight(kPressTarget);
    button->showKey(QKeySequence(key));
    button->setObjectName(name);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_keyButtons.push_back({button, iconName});
    return button;
}

QWidget* PressWalkPlace::makeKeys() {
    const auto row = [](const std::vector<Button*>& buttons) {
        auto* page = new QWidget;
        auto* layout = new QHBoxLayout(page);
        layout->setContentsMargins(0, 0, 0, 0);
        layout->setSpacing(kCentreGap);
        for (Button* button : buttons)
            layout->addWidget(button);
        return page;
    };
    m_back = makeKey(tr("Back a step"), QStringLiteral("undo"), Qt::Key_B, QStringLiteral("backAStep"));
    m_hold = makeKey(tr("Hold garment"), QStringLiteral("hold"), Qt::Key_H, QStringLiteral("holdGarment"));
    m_pause = makeKey(tr("Pause walk"), QStringLiteral("pause"), Qt::Key_P, QStringLiteral("pauseWalk"));
    m_spoil = makeKey(tr("Mark spoiled"), QStringLiteral("close"), Qt::Key_X, QStringLiteral("markSpoiled"));
    m_unbegin =
        makeKey(tr("Back on the walk"), QStringLiteral("undo"), Qt::Key_R, QStringLiteral("backOnTheWalk"));
    m_goOn = makeKey(tr("Go on"), QString(), Qt::Key_Escape, QStringLiteral("goOn"));
    m_goOn->showKeyText(tr("Esc"));
    m_pressedOn =
        makeKey(tr("Go on with it"), QStringLiteral("tick"), Qt::Key_G, QStringLiteral("pressedOn"));
    m_spoiledByHeat =
        makeKey(tr("Mark spoiled"), QStringLiteral("close"), Qt::Key_X, QStringLiteral("spoiledByHeat"));
    m_putBack = makeKey(tr("Put it back"), QStringLiteral("undo"), Qt::Key_R, QStringLiteral("putBack"));
    m_keys = new QStackedWidget;
    m_keys->addWidget(row({m_back, m_hold, m_pause}));
    m_keys->addWidget(row({m_spoil, m_unbegin, m_goOn}));
    m_keys->addWidget(row({m_pressedOn, m_spoiledByHeat, m_putBack}));
    return m_keys;
}

void PressWalkPlace::makeRack() {
    m_rackCard = new Card;
    m_rackCard->setTitle(tr("Cooling rack"), QStringLiteral("cooling"));
    m_rack = new RackList;
    m_rackEmpty = new Label(tr("Nothing is cooling."), Type::Small, &Tokens::ink3);
    m_rackEmpty->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    m_rackCard->content()->addWidget(m_rack);
    m_rackCard->content()->addWidget(m_rackEmpty);
    m_rackCard->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
}

void PressWalkPlace::makeAside() {
    m_asideCard = new Card;
    m_asideCard->setTitle(tr("Aside"), QStringLiteral("hold"));
    m_asideCard->setTitleInk(&Tokens::madder);
    m_promised = new WalkNotice(Qt::Key_T);
    m_promised->setObjectName(QStringLiteral("promisedAside"));
    m_aside = new AsideList;
    m_asideEmpty = new Label(tr("Nothing is aside."), Type::Small, &Tokens::ink3);
    m_asideEmpty->setObjectName(QStringLiteral("asideEmpty"));
    m_asideEmpty->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    m_asideEmpty->setAlignment(Qt::AlignTop);
    m_asideCard->content()->addWidget(m_promised);
    m_asideCard->content()->addWidget(m_aside, 1);
    m_asideCard->content()->addWidget(m_asideEmpty, 1);
}

} // namespace holdfast::app

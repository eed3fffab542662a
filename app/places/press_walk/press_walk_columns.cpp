// The three columns of Press walk: the walk, the garment in hand with its keys, the rack and what stands
// aside.
#include "app/places/press_walk/press_walk_place.h"

#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/current_garment.h"
#include "app/places/press_walk/promised_notice.h"
#include "app/places/press_walk/walk_delegate.h"
#include "app/places/press_walk/walk_list.h"
#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/label.h"

#include <QHBoxLayout>
#include <QListView>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kCentreGap = 10;

} // namespace

QWidget* PressWalkPlace::makeWalkColumn() {
    auto* card = new Card;
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
    card->content()->addWidget(m_list, 1);
    card->content()->addWidget(m_nothingReady, 1);
    return card;
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
    button->setTargetHeight(kPressTarget);
    button->showKey(QKeySequence(key));
    button->setObjectName(name);
    button->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
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
    m_keys = new QStackedWidget;
    m_keys->addWidget(row({m_back, m_hold, m_pause}));
    m_keys->addWidget(row({m_spoil, m_unbegin, m_goOn}));
    m_keys->setFixedHeight(kPressTarget);
    return m_keys;
}

QWidget* PressWalkPlace::makeAsideColumn() {
    auto* column = new QWidget;
    m_rackCard = new Card;
    m_rackCard->setTitle(tr("Cooling rack"), QStringLiteral("cooling"));
    m_rack = new RackList;
    m_rackEmpty = new Label(tr("Nothing cools."), Type::Small, &Tokens::ink3);
    m_rackEmpty->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    m_rackCard->content()->addWidget(m_rack);
    m_rackCard->content()->addWidget(m_rackEmpty);
    m_rackCard->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);

    m_asideCard = new Card;
    m_asideCard->setTitle(tr("Aside"), QStringLiteral("hold"));
    m_asideCard->setTitleInk(&Tokens::madder);
    m_promised = new PromisedNotice;
    m_aside = new AsideList;
    m_asideEmpty = new Label(tr("Nothing stands aside."), Type::Small, &Tokens::ink3);
    m_asideEmpty->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    m_asideEmpty->setAlignment(Qt::AlignTop);
    m_asideCard->content()->addWidget(m_promised);
    m_asideCard->content()->addWidget(m_aside, 1);
    m_asideCard->content()->addWidget(m_asideEmpty, 1);

    auto* layout = new QVBoxLayout(column);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(kCardStack);
    layout->addWidget(m_rackCard);
    layout->addWidget(m_asideCard, 1);
    return column;
}

} // namespace holdfast::app

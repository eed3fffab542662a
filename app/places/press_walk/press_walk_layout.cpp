// SPDX-License-Identifier: GPL-3.0-or-later
// Where the parts of Press walk are, by the room there is.
//
// Three columns in a wide window. In a narrower one the walk and what is aside share the left column by
// tabs. In an upright one the garment is above both. What is read from two metres (panel, Next, keys)
// grows with the window, and gives least way where it is small; below that the whole place scrolls.
#include "app/places/press_walk/press_walk_place.h"

#include "app/desk/formats.h"
#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/current_garment.h"
#include "app/places/press_walk/day_strip.h"
#include "app/places/press_walk/promised_aside.h"
#include "app/places/press_walk/rack_list.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/sewn_tabs.h"
#include "app/widgets/vertical_scroll.h"

#include <QGridLayout>
#include <QLayout>
#include <QListView>
#include <QStackedWidget>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kLeastWide = 1180;  // of the place, for three columns
constexpr int kLeastBeside = 760; // for two
constexpr int kUsualWidth = 1240; // below this the side columns give some of their width to the centre
constexpr int kWalkWidth = 328;
constexpr int kAsideWidth = 284;
constexpr int kNarrowWalkWidth = 290;
constexpr int kNarrowAsideWidth = 258;
constexpr int kBesideWidth = 300;
constexpr int kMostGrown = 420; // a side column in the largest window
constexpr int kLeastList = 200; // of a list below the garment
constexpr int kLowBeside = 430; // of the place: lower, and the rack leaves the walk most of the column
constexpr int kRackRows = 4;    // seen without scrolling
constexpr int kFewRackRows = 2;

// Panel, Next and keys are as they were drawn where the centre is between these heights.
constexpr double kShrinksBelow = 560;
constexpr double kGrowsAbove = 680;
constexpr double kDrawnWidth = 598;
constexpr double kLeastScale = 0.7;
constexpr double kMostScale = 2.4;
constexpr int kLeastKeys = 44; // a finger's target
constexpr int kMostKeys = 84;
constexpr int kLeastForIcons = 580; // of the centre; below it the keys have their words alone
constexpr int kLeastGarment = 170;  // below this the card shows its head alone

} // namespace

void PressWalkPlace::arrange() {
    const int wide = width();
    const bool isUpright = height() > wide;
    place(wide >= kLeastWide && !isUpright     ? Arrangement::Wide
          : wide >= kLeastBeside && !isUpright ? Arrangement::Beside
                                               : Arrangement::Above);
    const double grown = std::clamp(wide / 1366.0, 1.0, 1.5);
    const bool isNarrow = wide < kUsualWidth;
    const auto column = [&](int usual, int narrow) {
        return isNarrow ? narrow : std::min(kMostGrown, static_cast<int>(usual * grown));
    };
    const bool isWide = m_arrangement == Arrangement::Wide;
    const bool isBeside = m_arrangement == Arrangement::Beside;
    const int left = isWide ? column(kWalkWidth, kNarrowWalkWidth) : kBesideWidth;
    const int right = isWide ? column(kAsideWidth, kNarrowAsideWidth) : kBesideWidth;
    for (QWidget* part : {static_cast<QWidget*>(m_walkCard), static_cast<QWidget*>(m_tabs)}) {
        part->setMinimumWidth(isWide || isBeside ? left : 0);
        part->setMaximumWidth(isWide || isBeside ? left : QWIDGETSIZE_MAX);
    }
    for (QWidget* part : {static_cast<QWidget*>(m_rackCard), static_cast<QWidget*>(m_asideCard)}) {
        part->setMinimumWidth(isWide || isBeside ? right : 0);
        part->setMaximumWidth(isWide || isBeside ? right : QWIDGETSIZE_MAX);
    }
    m_rack->setMostRows(isLow() ? kFewRackRows : kRackRows);
    m_rackCard->showTitle(!isLow());
    m_columns->setRowMinimumHeight(1, isBeside && !isLow() ? kCardStack : 0);
    if (m_shop)
        showTabs();
    fitCentre();
}

void PressWalkPlace::place(Arrangement arrangement) {
    if (arrangement == m_arrangement)
        return;
    m_arrangement = arrangement;
    while (QLayoutItem* item = m_columns->takeAt(0))
        delete item;
    for (int at = 0; at < 4; ++at) {
        m_columns->setRowStretch(at, 0);
        m_columns->setColumnStretch(at, 0);
    }
    const bool isAbove = arrangement == Arrangement::Above;
    m_walkCard->setMinimumHeight(isAbove ? kLeastList : 0);
    m_asideCard->setMinimumHeight(isAbove ? kLeastList : 0);
    // The tabs are sewn to the card below them, with nothing between.
    const bool isBeside = arrangement == Arrangement::Beside;
    m_columns->setVerticalSpacing(isBeside ? 0 : kCardStack);
    switch (arrangement) {
    case Arrangement::Wide:
        m_columns->addWidget(m_walkCard, 0, 0, 2, 1);
        m_columns->addWidget(m_centre, 0, 1, 2, 1);
        m_columns->addWidget(m_rackCard, 0, 2);
        m_columns->addWidget(m_asideCard, 1, 2);
        m_columns->setColumnStretch(1, 1);
        m_columns->setRowStretch(1, 1);
        break;
    case Arrangement::Beside:
        m_columns->addWidget(m_rackCard, 0, 0);
        m_columns->addWidget(m_tabs, 2, 0);
        m_columns->addWidget(m_walkCard, 3, 0);
        m_columns->addWidget(m_asideCard, 3, 0);
        m_columns->addWidget(m_centre, 0, 1, 4, 1);
        m_columns->setColumnStretch(1, 1);
        m_columns->setRowStretch(3, 1);
        break;
    case Arrangement::Above:
        m_columns->addWidget(m_centre, 0, 0, 1, 2);
        m_columns->addWidget(m_walkCard, 1, 0, 2, 1);
        m_columns->addWidget(m_rackCard, 1, 1);
        m_columns->addWidget(m_asideCard, 2, 1);
        m_columns->setColumnStretch(0, 1);
        m_columns->setColumnStretch(1, 1);
        m_columns->setRowStretch(0, 1);
        m_columns->setRowStretch(2, 1);
        break;
    case Arrangement::None:
        break;
    }
    showSide(m_side);
}

// Panel, Next and keys as large as the room lets them be; the card above them takes what is left.
void PressWalkPlace::fitCentre() {
    const bool isAbove = m_arrangement == Arrangement::Above;
    const int strip = m_strip->isHidden() ? 0 : m_strip->sizeHint().height();
    const int foot = m_foot->heightForWidth(width() - 2 * kGutter);
    m_foot->setFixedHeight(foot);
    const int room = height() - strip - foot - 4;
    const int high = isAbove ? room * 11 / 20 : room; // the lists take the rest
    const int sides = isAbove ? 0
                      : m_arrangement == Arrangement::Wide
                          ? m_walkCard->minimumWidth() + m_asideCard->minimumWidth() + 2 * kCardGap
                          : kBesideWidth + kCardGap;
    const int wide = width() - 2 * kGutter - sides;
    const double scale =
        std::clamp(high < kShrinksBelow ? high / kShrinksBelow
                                        : std::max(1.0, std::min(high / kGrowsAbove, wide / kDrawnWidth)),
                   kLeastScale, kMostScale);
    m_panel->setScale(scale);
    m_next->setScale(scale);
    const int keys = std::clamp(static_cast<int>(std::lround(kPressTarget * scale)), kLeastKeys, kMostKeys);
    const bool hasIcons = wide >= kLeastForIcons || m_arrangement == Arrangement::Wide;
    for (const auto& [key, iconName] : m_keyButtons) {
        key->setTargetHeight(keys);
        key->setIconName(hasIcons ? iconName : QString());
    }
    m_keys->setFixedHeight(keys);
    const int gaps = 3 * m_centre->layout()->spacing();
    m_current->setCompact(high - m_panel->height() - m_next->height() - keys - gaps < kLeastGarment);
}

void PressWalkPlace::showSide(Side side) {
    m_side = side;
    const bool isBeside = m_arrangement == Arrangement::Beside;
    m_tabs->setVisible(isBeside);
    m_walkCard->setVisible(!isBeside || side == Side::Walk);
    m_asideCard->setVisible(!isBeside || side == Side::Aside);
    if (!isBeside) {
        m_tabs->sewOnto(nullptr);
        m_walkCard->openTop(0, 0);
        m_asideCard->openTop(0, 0);
        return;
    }
    m_tabs->setCurrent(static_cast<int>(side));
    m_tabs->sewOnto(side == Side::Walk ? m_walkCard : m_asideCard);
}

bool PressWalkPlace::isLow() const {
    return m_arrangement == Arrangement::Beside && height() < kLowBeside;
}

void PressWalkPlace::showTabs() {
    const PromisedAside promised = promisedAside(*m_shop, m_walk);
    if (isLow()) { // one line: the walk is counted in the header, what is promised must be seen
        m_tabs->setTabs({{tr("The walk")},
                         {promised.isEmpty() ? tr("Aside %1").arg(m_walk.aside.size())
                                             : tr("Aside, %1 promised").arg(promised.garments.size())}});
        m_tabs->setCurrent(static_cast<int>(m_side));
        return;
    }
    m_tabs->setTabs(
        {{tr("The walk"), tr("%1 of %2").arg(m_walk.pressed).arg(m_walk.total)},
         {tr("Aside"), promised.isEmpty()
                           ? tr("%n garment|%n garments", nullptr, howMany(m_walk.aside.size()))
                           : tr("%1, %2 promised").arg(m_walk.aside.size()).arg(promised.garments.size())}});
    m_tabs->setCurrent(static_cast<int>(m_side));
}

void PressWalkPlace::toggleStrip() {
    m_strip->setVisible(m_strip->isHidden());
    fitCentre();
}

} // namespace holdfast::app

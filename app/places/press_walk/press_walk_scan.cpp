// SPDX-License-Identifier: GPL-3.0-or-later
// What a scanned paper does at Press walk.
#include "app/places/press_walk/press_walk_place.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/press_walk/aside_list.h"
#include "app/widgets/button.h"

#include <QListView>

namespace holdfast::app {

bool PressWalkPlace::takeScan(const SlipTarget& matter) {
    if (matter.roll || !matter.order)
        return false;
    refresh();
    if (m_isStale)
        showWalk();
    if (!matter.garment)
        return showNextOf(*matter.order);
    const Garment* garment = m_shop->facts.garments.find(*matter.garment);
    return garment && takeUpScanned(*garment);
}

bool PressWalkPlace::takeUpScanned(const Garment& garment) {
    const auto assessed = m_shop->assessments.find(garment.id);
    if (assessed == m_shop->assessments.end())
        return false;
    if (const QString why = whyNotTakenUp(garment); !why.isEmpty()) {
        note(why);
        emit desk().failed(why);
        if (!m_inHand)
            pointTo(garment.id);
        return true;
    }
    if (takeUp(garment.id))
        takeKeyboard();
    return true;
}

QString PressWalkPlace::whyNotTakenUp(const Garment& garment) const {
    const QString number = numberOf(garment.id);
    if (m_inHand == garment.id)
        return tr("%1 is in hand already.").arg(number);
    if (m_isPaused)
        return tr("The walk is paused. Press P to go on.");
    if (m_inHand)
        return handsAreFull();
    const Assessment& assessment = m_shop->of(garment.id);
    switch (assessment.stage) {
    case Stage::ToPress:
        break;
    case Stage::OnPress:
        return tr("%1 waits at the press: its key on the rack turns to it.").arg(number);
    case Stage::Cooling:
        return tr("%1 is cooling on the rack: its key there picks it up.").arg(number);
    case Stage::Resting:
    case Stage::Ready:
        return tr("%1 is pressed already.").arg(number);
    case Stage::HandedOver:
        return tr("%1 is handed over already.").arg(number);
    case Stage::Cancelled:
        return tr("%1 is cancelled.").arg(number);
    case Stage::ToConfirm:
    case Stage::ToBuy:
    case Stage::ToWash:
    case Stage::Drying:
    case Stage::ToCut:
        break;
    }
    const auto aside = std::ranges::find(m_walk.aside, garment.id, &AsideEntry::garment);
    if (aside == m_walk.aside.end())
        return {};
    return tr("%1 cannot be pressed yet. %2: %3").arg(number, words(aside->what), words(aside->why));
}

// The first of the order's garments that is at the press, on the rack or planned; else the first that is
// aside.
bool PressWalkPlace::showNextOf(OrderId order) {
    const auto isOfOrder = [&](GarmentId garment) { return garmentOf(garment).order == order; };
    const WalkEntry* first = nullptr;
    for (const WalkRun& run : m_walk.runs)
        for (const WalkEntry& entry : run.entries)
            if (isOfOrder(entry.garment) && entry.state != WalkState::Pressed &&
                (!first || std::tuple(entry.state, entry.begins) < std::tuple(first->state, first->begins)))
                first = &entry;
    if (first) {
        const QString number = numberOf(first->garment);
        pointTo(first->garment);
        desk().say(first->state == WalkState::OnPress ? tr("%1 is at the press now.").arg(number)
                   : first->state == WalkState::Cooling
                       ? tr("%1 is cooling on the rack.").arg(number)
                       : tr("%1 is next of this order, planned for %2.")
                             .arg(number, clock(m_shop->now.toLocal(first->begins))));
        return true;
    }
    const auto aside = std::ranges::find_if(m_walk.aside, isOfOrder, &AsideEntry::garment);
    if (aside == m_walk.aside.end())
        return false;
    pointTo(aside->garment);
    desk().say(
        tr("%1 cannot be pressed yet: %2.").arg(numberOf(aside->garment), withinLine(words(aside->what))));
    return true;
}

void PressWalkPlace::pointTo(GarmentId garment) {
    if (const QModelIndex index = m_model.indexOf(garment); index.isValid()) {
        showSide(Side::Walk);
        m_list->setCurrentIndex(index);
        m_list->scrollTo(index);
    } else {
        showSide(Side::Aside);
        m_aside->turnTo(garment);
    }
}

} // namespace holdfast::app

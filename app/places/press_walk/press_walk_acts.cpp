// SPDX-License-Identifier: GPL-3.0-or-later
// What a person does at Press walk.
#include "app/places/press_walk/press_walk_place.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/promised_aside.h"
#include "app/widgets/button.h"
#include "core/trade/unit_words.h"
#include "db/actions/press_actions.h"

namespace holdfast::app {

namespace {

SlipTarget matterOf(const Garment& garment) {
    SlipTarget matter;
    matter.order = garment.order;
    matter.garment = garment.id;
    matter.style = garment.style;
    matter.colour = garment.colour;
    matter.size = words(garment.size);
    matter.lot = garment.lot;
    return matter;
}

} // namespace

const Garment& PressWalkPlace::garmentOf(GarmentId garment) const {
    return m_shop->facts.garments.at(garment);
}

QString PressWalkPlace::numberOf(GarmentId garment) const {
    return garmentNumber(m_shop->facts, garmentOf(garment));
}

const RouteStep* PressWalkPlace::openStep(GarmentId garment) const {
    const Assessment& assessment = m_shop->of(garment);
    return assessment.progress.underway ? &assessment.route.steps[*assessment.progress.underway] : nullptr;
}

bool PressWalkPlace::isOnPress(GarmentId garment) const {
    const auto found = m_shop->assessments.find(garment);
    return found != m_shop->assessments.end() && found->second.stage == Stage::OnPress;
}

std::vector<OnTheRack> PressWalkPlace::rackNow() const {
    std::vector<OnTheRack> rack;
    for (const RackEntry& entry : m_walk.rack) {
        const auto count = counts().of(entry.garment);
        rack.push_back({entry.garment, entry.peel, count ? count->left : std::chrono::milliseconds{0},
                        !count || !count->isAskew});
    }
    return rack;
}

NextAtPress PressWalkPlace::offered() const {
    const std::vector<OnTheRack> rack = rackNow();
    return nextAtPress({m_inHand, isUnderHeat(), rack, m_walk.firstPlanned()});
}

bool PressWalkPlace::isUnderHeat() const {
    const RouteStep* step = m_inHand ? openStep(*m_inHand) : nullptr;
    return step && step->platen.count() > 0;
}

bool PressWalkPlace::isHeatCounting() const {
    const auto count = isUnderHeat() ? counts().of(*m_inHand) : std::nullopt;
    return count && !count->isOver();
}

bool PressWalkPlace::isTooLong() const {
    const auto count = isUnderHeat() ? counts().of(*m_inHand) : std::nullopt;
    return count && count->isOver() && count->secondsOver() >= m_shop->facts.settings.mostOverUnderHeat;
}

bool PressWalkPlace::mustBeHeld() const {
    const NextAtPress next = offered();
    return next.kind == NextAtPress::Kind::AwaitRack ||
           (next.kind == NextAtPress::Kind::GoOn && isHeatCounting());
}

void PressWalkPlace::next() {
    if (const QString why = whyNotNext(); !why.isEmpty()) {
        note(why);
        return;
    }
    if (mustBeHeld()) {
        noteWhileCounting(tr("Still counting. Hold for a second to end it now."));
        return;
    }
    nextNow();
}

void PressWalkPlace::nextNow() {
    if (!m_shop || !whyNotNext().isEmpty())
        return;
    note({});
    const NextAtPress next = offered();
    if (next.kind == NextAtPress::Kind::TakeUp)
        takeUp(*next.garment);
    else if (next.garment)
        finish(*next.garment);
}

void PressWalkPlace::finish(GarmentId garment) {
    const bool wasCooling = m_shop->of(garment).stage == Stage::Cooling;
    const Route route = m_shop->of(garment).route;
    if (!did(db::finishStep(desk().file(), garment, route)))
        return;
    if (wasCooling && isOnPress(garment))
        turnToGarment(garment);
    else if (m_shop->of(garment).stage == Stage::Cooling)
        takeUpFollowing();
}

// While one cools, the next is worked on.
void PressWalkPlace::takeUpFollowing() {
    if (m_inHand || m_isPaused)
        return;
    const NextAtPress next = offered();
    if (next.kind == NextAtPress::Kind::BringBack)
        finish(*next.garment);
    else if (next.kind == NextAtPress::Kind::TakeUp)
        takeUp(*next.garment);
}

bool PressWalkPlace::takeUp(GarmentId garment) {
    m_chosen.reset();
    const auto shop = m_shop; // outlives the act, after which the place shows a newer one
    return did(db::takeUp(desk().file(), garment, shop->of(garment).route, desk().now(), &shop->conditions));
}

void PressWalkPlace::turnToGarment(GarmentId garment) {
    const auto found = m_shop->assessments.find(garment);
    if (found == m_shop->assessments.end())
        return;
    if (m_isPaused) {
        note(tr("The walk is paused. Press P to go on."));
        return;
    }
    switch (found->second.stage) {
    case Stage::OnPress:
        if (isUnderHeat() && m_inHand != garment) {
            note(tr("%1 is under the platen. Lift it first.").arg(numberOf(*m_inHand)));
            return;
        }
        m_chosen = garment;
        refresh();
        m_next->setFocus();
        break;
    case Stage::Cooling:
        takeFromRack(garment);
        break;
    case Stage::ToPress:
        if (m_inHand)
            note(handsAreFull());
        else if (takeUp(garment))
            m_next->setFocus();
        break;
    default:
        note(tr("%1 is pressed.").arg(numberOf(garment)));
        break;
    }
}

void PressWalkPlace::turnToRackRow(int row) {
    if (row >= m_rack->rack().rowCount()) {
        note(tr("Nothing is at %1 on the rack.").arg(row + 1));
        return;
    }
    const GarmentId garment = m_rack->rack().row(row).garment;
    const auto count = counts().of(garment);
    if (m_shop->of(garment).stage == Stage::Cooling && count && !count->isOver())
        hold([this, garment] { takeFromRack(garment); },
             tr("%1 is still cooling. Hold %2 for a second to pick it up now.")
                 .arg(numberOf(garment))
                 .arg(row + 1));
    else
        takeFromRack(garment);
}

void PressWalkPlace::takeFromRack(GarmentId garment) {
    if (m_isPaused) {
        note(tr("The walk is paused. Press P to go on."));
        return;
    }
    note({});
    if (m_shop->of(garment).stage != Stage::Cooling) {
        turnToGarment(garment);
        return;
    }
    if (isUnderHeat()) {
        note(tr("%1 is under the platen. Lift it first.").arg(numberOf(*m_inHand)));
        return;
    }
    finish(garment);
}

void PressWalkPlace::backAStep() {
    if (!m_shop)
        return;
    std::optional<GarmentId> garment = m_inHand;
    if (!garment) {
        // The one that was put on the rack last.
        std::optional<Instant> last;
        for (const RackEntry& entry : m_walk.rack) {
            const auto since = m_shop->of(entry.garment).progress.underwaySince;
            if (!last || since > last) {
                last = since;
                garment = entry.garment;
            }
        }
    }
    if (!garment) {
        note(tr("Nothing is on the press."));
        return;
    }
    note({});
    m_chosen = garment;
    did(db::backAStep(desk().file(), *garment));
}

void PressWalkPlace::offerHold() {
    if (!m_inHand) {
        note(tr("Nothing is on the press to hold."));
        return;
    }
    if (isTooLong()) {
        note(whyNotNext());
        return;
    }
    const Assessment& assessment = m_shop->of(*m_inHand);
    const bool hadHeat = firstHeatIsBehind(assessment.route, assessment.progress);
    m_unbegin->setCannot(hadHeat ? tr("It has had heat: finish it, or mark it spoiled.") : QString());
    note({});
    m_isHoldOffered = true;
    showKeys();
    (hadHeat ? m_goOn : m_unbegin)->setFocus();
}

void PressWalkPlace::backOnTheWalk() {
    if (!m_inHand)
        return;
    if (!m_unbegin->isEnabled()) {
        note(m_unbegin->toolTip());
        return;
    }
    const GarmentId garment = *m_inHand;
    m_isHoldOffered = false;
    m_chosen.reset();
    desk().done(db::putBackOnWalk(desk().file(), garment));
    m_next->setFocus();
}

void PressWalkPlace::askSpoil() {
    if (isTooLong()) {
        spoiledByHeat();
        return;
    }
    const std::optional<GarmentId> garment = m_inHand ? m_inHand : dueOnRack(rackNow());
    if (!garment) {
        note(tr("Nothing is on the press to mark as spoiled."));
        return;
    }
    m_isHoldOffered = false;
    showKeys();
    takeKeyboard(); // the form gives it back to where work goes on
    emit desk().slipAsked(SlipName::Spoil, matterOf(garmentOf(*garment)));
}

void PressWalkPlace::setPaused(bool isPaused) {
    m_isPaused = isPaused;
    note({});
    refresh();
    takeKeyboard();
}

// From one card of what is promised today to the next, and after the last one to the first.
void PressWalkPlace::turnToPromised() {
    const auto& garments = promisedAside(*m_shop, m_walk).garments;
    if (garments.empty()) {
        note(tr("Nothing that is promised today is aside."));
        return;
    }
    const AsideEntry* current = m_aside->hasFocus() ? m_aside->current() : nullptr;
    auto next = current ? std::ranges::find(garments, current->garment) : garments.end();
    next = next == garments.end() || next + 1 == garments.end() ? garments.begin() : next + 1;
    showSide(Side::Aside);
    m_aside->turnTo(*next);
}

void PressWalkPlace::freeCurrent() {
    const AsideEntry* current = m_aside->current();
    if (!current) {
        note(tr("Nothing is aside."));
        return;
    }
    const AsideEntry entry = *current;
    const Garment& garment = garmentOf(entry.garment);
    if (entry.cutFrom)
        turnToBench(entry);
    else if (entry.frees)
        desk().free(*entry.frees,
                    entry.finding ? SlipTarget::of(*entry.finding, garment) : matterOf(garment));
}

void PressWalkPlace::printDaySheet() {
    emit desk().paperAsked(PaperName::DaySheet, {});
}

void PressWalkPlace::waiveCurrent() {
    const AsideEntry* entry = m_aside->current();
    if (!entry || !m_aside->aside().mayBeWaived(m_aside->currentIndex().row())) {
        note(entry && entry->isHeld ? tr("This hold cannot be let through: there is nothing to press with.")
                                    : tr("No hold to let through: it only waits for its work."));
        return;
    }
    emit desk().slipAsked(SlipName::Waive, SlipTarget::of(*entry -> finding, garmentOf(entry->garment)));
}

void PressWalkPlace::turnToBench(const AsideEntry& entry) {
    const FilmRoll* roll = m_shop->facts.rolls.find(*entry.cutFrom);
    if (!roll)
        return;
    SlipTarget matter;
    matter.garment = entry.garment;
    matter.roll = roll->id;
    matter.film = roll->film;
    const auto& decals = garmentOf(entry.garment).decals;
    const auto waits = std::ranges::find_if(
        decals, [&](const Decal& decal) { return !decal.isCut() && decal.film == roll->film; });
    if (waits != decals.end())
        matter.decal = waits->id;
    emit desk().placeAsked(PlaceName::CuttingBench, matter);
}

QString PressWalkPlace::handsAreFull() const {
    const Assessment& assessment = m_shop->of(*m_inHand);
    return firstHeatIsBehind(assessment.route, assessment.progress) || isUnderHeat()
               ? tr("%1 is on the press. Finish its step first.").arg(numberOf(*m_inHand))
               : tr("%1 is on the press. Finish its step first, or put it back on the walk: H, then R.")
                     .arg(numberOf(*m_inHand));
}

void PressWalkPlace::noteWhileCounting(const QString& words) {
    note(words);
    m_isNoteOfCount = true;
}

void PressWalkPlace::note(const QString& words) {
    m_note = words;
    m_isNoteOfCount = false;
    if (words.isEmpty())
        m_noteEnds.stop();
    else
        m_noteEnds.start();
    showPanel();
}

} // namespace holdfast::app

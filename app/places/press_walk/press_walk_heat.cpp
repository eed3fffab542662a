// SPDX-License-Identifier: GPL-3.0-or-later
// What is done about a count that went wrong: too long under heat, or by a clock that was set back.
#include "app/places/press_walk/press_walk_place.h"

#include "app/desk/formats.h"
#include "db/actions/press_actions.h"

namespace holdfast::app {

void PressWalkPlace::pressedOn() {
    if (!isTooLong())
        return;
    finish(*m_inHand);
    takeKeyboard();
}

void PressWalkPlace::spoiledByHeat() {
    if (!isTooLong())
        return;
    const QString over = timeSpan(counts().of(*m_inHand)->secondsOver());
    did(db::markSpoiled(desk().file(), *m_inHand, plain(tr("Too long under heat, by %1").arg(over))));
    takeKeyboard();
}

// It was never under the platen, whatever was counted.
void PressWalkPlace::putBack() {
    if (!isTooLong())
        return;
    const GarmentId garment = *m_inHand;
    const Assessment& assessment = m_shop->of(garment);
    if (firstHeatIsBehind(assessment.route, assessment.progress)) {
        backAStep();
    } else {
        m_chosen.reset();
        did(db::putBackOnWalk(desk().file(), garment));
    }
    takeKeyboard();
}

void PressWalkPlace::countAgain() {
    std::optional<GarmentId> askew;
    for (const StepCount& count : counts().all())
        if (count.isAskew && (!askew || count.garment == m_inHand))
            askew = count.garment;
    if (askew)
        did(db::restartStep(desk().file(), *askew));
}

} // namespace holdfast::app

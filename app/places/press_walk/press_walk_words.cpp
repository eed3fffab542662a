// SPDX-License-Identifier: GPL-3.0-or-later
// What Press walk says in its panel, on Next and on the rack.
#include "app/places/press_walk/press_walk_place.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/press_walk/aside_list.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/label.h"
#include "core/trade/unit_words.h"

#include <QApplication>
#include <QStackedWidget>

namespace holdfast::app {

namespace {

constexpr Seconds kSoon{20};        // the rack says so before it is due
constexpr Seconds kWorthSaying{90}; // a garment that cools this short is kept in mind
constexpr int kLastRackKey = 9;

const RouteStep* stepAfter(const Assessment& assessment) {
    const auto at = assessment.progress.underway;
    return at && *at + 1 < assessment.route.steps.size() ? &assessment.route.steps[*at + 1] : nullptr;
}

// It must be done at once: nothing is to lead away from it.
bool isWarmPeel(const RouteStep* step) {
    return step != nullptr && step->kind == StepKind::PeelCarrier && step->peel == Peel::Warm;
}

// "150 °C · medium": what the panel says next to the seconds.
QString heatWords(const RouteStep& step) {
    QStringList parts = words(step.detail).split(QStringLiteral(" · "));
    parts.removeAll(words(secondsWords(step.platen)));
    const QString heat = step.temperature ? celsius(*step.temperature) : QString();
    if (!heat.isEmpty() && !parts.contains(heat))
        parts.prepend(heat);
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

// Minutes and seconds always, so that a column of counts lines up: "0:18".
QString clockOf(Seconds left) {
    return left.count() < 60 ? QStringLiteral("0:%1").arg(left.count(), 2, 10, QLatin1Char('0'))
                             : countdown(left);
}

// What is done with a garment whose count is over: "lift, let it cool".
QString afterHeat(const RouteStep* next) {
    if (!next)
        return PressWalkPlace::tr("lift, done");
    if (next->isWaiting())
        return PressWalkPlace::tr("lift, let it cool");
    return PressWalkPlace::tr("lift, %1").arg(inShort(words(next->title)));
}

} // namespace

PanelWords PressWalkPlace::panelWords() const {
    PanelWords shown;
    const NextAtPress next = offered();
    switch (next.kind) {
    case NextAtPress::Kind::GoOn:
        shown = stepWords(*next.garment);
        break;
    case NextAtPress::Kind::BringBack:
        shown = broughtBackWords(*next.garment);
        break;
    case NextAtPress::Kind::TakeUp:
        shown = plannedWords(*next.garment);
        break;
    case NextAtPress::Kind::AwaitRack:
        shown = awaitedWords(*next.garment);
        break;
    case NextAtPress::Kind::Nothing:
        shown = idleWords();
        break;
    }
    if (!m_note.isEmpty())
        shown.note = m_note;
    else if (m_isPaused)
        shown.note = isUnderHeat() ? tr("Paused. What lies under heat can still be lifted.")
                                   : tr("Paused. Press P to go on; the times in the list wait.");
    else if (const auto due = dueOnRack(rackNow()); due && next.kind == NextAtPress::Kind::GoOn &&
                                                    !shown.asksOutcome &&
                                                    !isWarmPeel(openStep(*next.garment))) {
        shown.note = dueWords(*due);
        shown.isAlert = true;
    }
    return shown;
}

// What waits on the rack while another garment is in hand.
QString PressWalkPlace::dueWords(GarmentId garment) const {
    const RouteStep* next = stepAfter(m_shop->of(garment));
    const QString what = next ? inShort(words(next->title)) : tr("done");
    if (isUnderHeat())
        return tr("%1: %2 as soon as this one is lifted.").arg(numberOf(garment), what);
    for (int row = 0; row < std::min(kLastRackKey, m_rack->rack().rowCount()); ++row)
        if (m_rack->rack().row(row).garment == garment)
            return tr("%1: %2 now. %3 turns to it.").arg(numberOf(garment), what).arg(row + 1);
    return tr("%1: %2 now.").arg(numberOf(garment), what);
}

// What is set at the press before the first garment of a heat run is pressed; empty: nothing.
QString PressWalkPlace::heatToSet(GarmentId garment) const {
    const auto run = std::ranges::find_if(m_walk.runs, [&](const WalkRun& each) {
        return each.entries.front().garment == garment && each.change.count() > 0;
    });
    const Assessment& assessment = m_shop->of(garment);
    if (run == m_walk.runs.end() || firstHeatIsBehind(assessment.route, assessment.progress))
        return {};
    const QString press = words(m_shop->facts.presses.at(run->press).name);
    return run->changedFrom
               ? tr("First set %1 to %2: from %3 it takes about %4.")
                     .arg(press, celsius(run->temperature), celsius(*run->changedFrom), timeSpan(run->change))
               : tr("First set %1 to %2: it takes about %3.")
                     .arg(press, celsius(run->temperature), timeSpan(run->change));
}

PanelWords PressWalkPlace::stepWords(GarmentId garment) const {
    const Assessment& assessment = m_shop->of(garment);
    const RouteStep& step = *openStep(garment);
    PanelWords shown;
    shown.count = counts().of(garment);
    if (!shown.count) {
        shown.mood = PanelWords::Mood::ByHand;
        shown.word = words(step.title);
        shown.detail = words(step.detail);
        shown.note = heatToSet(garment);
        shown.isAlert = !shown.note.isEmpty();
    } else if (shown.count->isAskew) {
        shown = askewWords(step, *shown.count);
    } else if (isTooLong()) {
        shown = tooLongWords(step, *shown.count);
    } else if (shown.count->isOver()) {
        const RouteStep* next = stepAfter(assessment);
        shown.mood = PanelWords::Mood::Now;
        shown.word = tr("Lift now");
        shown.detail =
            next ? next->isWaiting() ? tr("then let it cool") : tr("then %1").arg(inShort(words(next->title)))
                 : tr("then it is done");
    } else {
        shown.mood = PanelWords::Mood::Counting;
        shown.word = words(step.title);
        shown.detail = heatWords(step);
    }
    shown.step =
        tr("Step %1 of %2").arg(*assessment.progress.underway + 1).arg(assessment.route.steps.size());
    return shown;
}

PanelWords PressWalkPlace::askewWords(const RouteStep& step, const StepCount& count) const {
    const Now now = desk().now();
    PanelWords shown;
    shown.count = count;
    shown.mood = PanelWords::Mood::Now;
    shown.word = tr("Count not known");
    shown.detail = tr("%1 began at %2 and it is %3: the clock was set back.")
                       .arg(words(step.title), clock(now.toLocal(count.startedAt)), clock(now.local()));
    shown.offersRestart = true;
    return shown;
}

PanelWords PressWalkPlace::tooLongWords(const RouteStep& step, const StepCount& count) const {
    PanelWords shown;
    shown.count = count;
    shown.mood = PanelWords::Mood::Now;
    shown.word = tr("Too long under heat");
    shown.detail = tr("%1 takes %2; %3 longer and it is likely scorched.")
                       .arg(words(step.title), timeSpan(count.counted),
                            timeSpan(m_shop->facts.settings.mostOverUnderHeat));
    shown.note = tr("Lift it and look. What happened to it?");
    shown.isAlert = true;
    shown.asksOutcome = true;
    return shown;
}

PanelWords PressWalkPlace::broughtBackWords(GarmentId garment) const {
    const RouteStep* next = stepAfter(m_shop->of(garment));
    PanelWords shown;
    shown.mood = PanelWords::Mood::Now;
    shown.step = tr("%1 is cool enough").arg(numberOf(garment));
    shown.word = next ? words(withCapital(inShort(words(next->title)).toStdString())) : tr("Done");
    shown.detail = garmentName(m_shop->facts, garmentOf(garment));
    shown.count = counts().of(garment);
    if (m_inHand)
        shown.note = tr("It must be peeled warm: %1 waits as it is.").arg(numberOf(*m_inHand));
    return shown;
}

PanelWords PressWalkPlace::plannedWords(GarmentId garment) const {
    PanelWords shown;
    shown.mood = PanelWords::Mood::ByHand;
    shown.step = tr("Next on the walk");
    shown.word = numberOf(garment);
    shown.detail = garmentName(m_shop->facts, garmentOf(garment));
    shown.note = decalWords(garmentOf(garment));
    if (const auto soonest = counts().soonest(); soonest && soonest->secondsLeft() <= kWorthSaying)
        if (const RouteStep* next = stepAfter(m_shop->of(soonest->garment)))
            shown.note = tr("%1: %2 in %3.")
                             .arg(numberOf(soonest->garment), inShort(words(next->title)),
                                  countdown(soonest->secondsLeft()));
    if (const QString heat = heatToSet(garment); !heat.isEmpty()) {
        shown.note = heat;
        shown.isAlert = true;
    }
    return shown;
}

PanelWords PressWalkPlace::awaitedWords(GarmentId garment) const {
    const RouteStep* next = stepAfter(m_shop->of(garment));
    PanelWords shown;
    shown.mood = PanelWords::Mood::Counting;
    shown.step = tr("%1 on the rack").arg(numberOf(garment));
    shown.word = tr("Cooling");
    shown.detail = next ? tr("then %1").arg(inShort(words(next->title))) : tr("then it is done");
    shown.count = counts().of(garment);
    shown.offersRestart = shown.count && shown.count->isAskew;
    return shown;
}

PanelWords PressWalkPlace::idleWords() const {
    PanelWords shown;
    shown.word = m_walk.pressed > 0 ? tr("All pressed") : tr("Nothing to press");
    shown.detail = m_walk.pressed > 0
                       ? tr("%n garment today|%n garments today", nullptr, howMany(m_walk.pressed))
                       : tr("Each garment aside says what it needs.");
    return shown;
}

QString PressWalkPlace::nextWords() const {
    if (isTooLong())
        return tr("Say what happened to it");
    const NextAtPress offer = offered();
    if (!offer.garment)
        return tr("Next");
    const RouteStep* next = stepAfter(m_shop->of(*offer.garment));
    const QString title = next ? inShort(words(next->title)) : tr("done");
    switch (offer.kind) {
    case NextAtPress::Kind::GoOn:
        if (isUnderHeat())
            return tr("Next: %1").arg(afterHeat(next));
        return next ? tr("Next: %1").arg(withinLine(words(next->title))) : tr("Next: done, let it rest");
    case NextAtPress::Kind::BringBack:
        return tr("Next: %1, %2").arg(title, numberOf(*offer.garment));
    case NextAtPress::Kind::TakeUp:
        return tr("Next: pick up %1").arg(numberOf(*offer.garment));
    case NextAtPress::Kind::AwaitRack:
        return tr("Next: %1").arg(title);
    case NextAtPress::Kind::Nothing:
        break;
    }
    return tr("Next");
}

void PressWalkPlace::showPanel() {
    if (m_shop)
        m_panel->show(panelWords());
}

void PressWalkPlace::showNext() {
    if (!m_shop)
        return;
    const QString text = nextWords();
    if (m_next->text() != text)
        m_next->setText(text);
    const QString cannot = whyNotNext();
    const bool hadFocus = m_next->hasFocus();
    if (m_next->isEnabled() == cannot.isEmpty() && m_next->toolTip() == cannot)
        return;
    m_next->setCannot(cannot);
    // A key that cannot be pressed loses the keyboard; one that can be again takes it from what it was given
    // to.
    const QWidget* focus = QApplication::focusWidget();
    if (hadFocus || (cannot.isEmpty() && focus && m_keys->isAncestorOf(focus)))
        takeKeyboard();
}

QString PressWalkPlace::whyNotNext() const {
    if (isTooLong())
        return tr("Say what happened to it first: G goes on with it, X marks it spoiled, R puts it back.");
    if (isStopped())
        return tr("The walk is paused. Press P to go on.");
    if (offered().kind == NextAtPress::Kind::Nothing)
        return tr("Nothing is ready to press.");
    return {};
}

RackRow PressWalkPlace::rackRow(GarmentId garment, RackRow::State state, const QString& text,
                                const QString& digits) const {
    const Garment& found = garmentOf(garment);
    return {garment,
            state,
            numberOf(garment),
            garmentInShort(m_shop->facts, found),
            text,
            digits,
            outlineName(m_shop->facts, found),
            clothOf(m_shop->facts, found)};
}

std::vector<RackRow> PressWalkPlace::rackRows() const {
    std::vector<RackRow> rows;
    for (const RackEntry& entry : m_walk.rack) {
        const auto count = counts().of(entry.garment);
        const QString then = inShort(words(entry.after));
        const auto add = [&](RackRow::State state, const QString& text, const QString& digits) {
            rows.push_back(rackRow(entry.garment, state, text, digits));
        };
        if (!count || count->isOver())
            add(RackRow::State::Due, tr("%1 now").arg(words(withCapital(then.toStdString()))),
                count ? QLatin1Char('+') + clockOf(count->secondsOver()) : QString());
        else if (count->isAskew)
            add(RackRow::State::Askew, tr("Clock set back, count again"), {});
        else if (count->secondsLeft() <= kSoon)
            add(RackRow::State::Soon, tr("Soon, %1").arg(then), clockOf(count->secondsLeft()));
        else
            add(RackRow::State::Cooling, tr("Then %1").arg(then), clockOf(count->secondsLeft()));
    }
    for (const WalkRun& run : m_walk.runs)
        for (const WalkEntry& entry : run.entries)
            if (entry.state == WalkState::OnPress && m_inHand != entry.garment)
                if (const RouteStep* step = openStep(entry.garment))
                    rows.push_back(rackRow(entry.garment, RackRow::State::PutBy,
                                           tr("Waits at the press: %1").arg(inShort(words(step->title))),
                                           {}));
    return rows;
}

void PressWalkPlace::showRack() {
    if (!m_shop)
        return;
    std::vector<RackRow> rows = rackRows();
    m_rack->setVisible(!rows.empty());
    m_rackEmpty->setVisible(rows.empty());
    m_rackCard->setCount(rows.empty() ? QString() : QString::number(rows.size()));
    m_rack->rack().show(std::move(rows));
}

} // namespace holdfast::app

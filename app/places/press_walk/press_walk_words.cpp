// What Press walk says in its panel, on Next and on the rack.
#include "app/places/press_walk/press_walk_place.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/press_walk/aside_list.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/label.h"
#include "core/trade/unit_words.h"

namespace holdfast::app {

namespace {

constexpr Seconds kSoon{20};        // the rack says so before it is due
constexpr Seconds kWorthSaying{90}; // a garment that cools this short is kept in mind

const RouteStep* stepAfter(const Assessment& assessment) {
    const auto at = assessment.progress.underway;
    return at && *at + 1 < assessment.route.steps.size() ? &assessment.route.steps[*at + 1] : nullptr;
}

// "150 °C · medium": what the panel says beside the seconds.
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
    PanelWords shown = m_inHand ? stepWords(*m_inHand) : restingWords();
    if (!m_note.isEmpty())
        shown.note = m_note;
    else if (m_isPaused)
        shown.note = tr("Paused. A count of heat runs on; the times in the list stand still.");
    else if (const auto due = dueOnRack(); due && m_inHand && !isHeatCounting()) {
        // A warm peel does not wait until the garment in hand is done.
        for (int row = 0; row < m_rack->rack().rowCount(); ++row)
            if (m_rack->rack().row(row).garment == *due)
                shown.note = tr("%1: %2. %3 turns to it.")
                                 .arg(numberOf(*due), withinLine(m_rack->rack().row(row).words))
                                 .arg(row + 1);
        shown.isAlert = true;
    }
    return shown;
}

PanelWords PressWalkPlace::stepWords(GarmentId garment) const {
    const Assessment& assessment = m_shop->of(garment);
    const RouteStep& step = *openStep(garment);
    PanelWords shown;
    shown.step =
        tr("Step %1 of %2").arg(*assessment.progress.underway + 1).arg(assessment.route.steps.size());
    shown.count = m_counts.of(garment);
    if (!shown.count) {
        shown.mood = PanelWords::Mood::ByHand;
        shown.word = words(step.title);
        shown.detail = words(step.detail);
        return shown;
    }
    if (shown.count->isAskew) {
        const Now now = desk().now();
        shown.mood = PanelWords::Mood::Now;
        shown.word = tr("Count not known");
        shown.detail =
            tr("%1 began at %2 and it is %3: the clock was set back.")
                .arg(words(step.title), clock(now.toLocal(shown.count->startedAt)), clock(now.local()));
        shown.offersRestart = true;
        return shown;
    }
    if (shown.count->isOver()) {
        shown.mood = PanelWords::Mood::Now;
        shown.word = tr("Lift now");
        const RouteStep* next = stepAfter(assessment);
        shown.detail =
            next ? next->isWaiting() ? tr("then let it cool") : tr("then %1").arg(inShort(words(next->title)))
                 : tr("then it is done");
        return shown;
    }
    shown.mood = PanelWords::Mood::Counting;
    shown.word = words(step.title);
    shown.detail = heatWords(step);
    return shown;
}

PanelWords PressWalkPlace::restingWords() const {
    PanelWords shown;
    if (const auto due = dueOnRack()) {
        const RouteStep* next = stepAfter(m_shop->of(*due));
        shown.mood = PanelWords::Mood::Now;
        shown.step = tr("%1 is cool enough").arg(numberOf(*due));
        shown.word = next ? words(withCapital(inShort(words(next->title)).toStdString())) : tr("Done");
        shown.detail = garmentName(m_shop->facts, garmentOf(*due));
        shown.count = m_counts.of(*due);
        return shown;
    }
    const auto soonest = m_counts.soonest();
    if (const auto planned = firstPlanned()) {
        shown.mood = PanelWords::Mood::ByHand;
        shown.step = tr("Next on the walk");
        shown.word = numberOf(*planned);
        shown.detail = garmentName(m_shop->facts, garmentOf(*planned));
        shown.note = decalWords(garmentOf(*planned));
        if (soonest && soonest->secondsLeft() <= kWorthSaying)
            if (const RouteStep* next = stepAfter(m_shop->of(soonest->garment)))
                shown.note = tr("%1: %2 in %3.")
                                 .arg(numberOf(soonest->garment), inShort(words(next->title)),
                                      countdown(soonest->secondsLeft()));
        return shown;
    }
    if (!m_walk.rack.empty()) {
        const GarmentId garment = m_walk.rack.front().garment;
        shown.mood = PanelWords::Mood::Counting;
        shown.step = tr("%1 on the rack").arg(numberOf(garment));
        shown.word = tr("Cooling");
        shown.detail = tr("then %1").arg(words(m_walk.rack.front().after));
        shown.count = m_counts.of(garment);
        shown.offersRestart = shown.count && shown.count->isAskew;
        return shown;
    }
    shown.word = m_walk.pressed > 0 ? tr("All pressed") : tr("Nothing to press");
    shown.detail =
        m_walk.pressed > 0
            ? tr("%1 today").arg(words(countWords(static_cast<std::int64_t>(m_walk.pressed), "garment")))
            : tr("What stands aside is freed at the right.");
    return shown;
}

QString PressWalkPlace::nextWords() const {
    if (m_inHand) {
        const Assessment& assessment = m_shop->of(*m_inHand);
        const RouteStep& step = *openStep(*m_inHand);
        const RouteStep* next = stepAfter(assessment);
        if (!step.isWaiting() && step.platen.count() > 0)
            return tr("Next: %1").arg(afterHeat(next));
        if (!next)
            return tr("Next: done, let it rest");
        return tr("Next: %1").arg(withinLine(words(next->title)));
    }
    if (const auto due = dueOnRack()) {
        const RouteStep* next = stepAfter(m_shop->of(*due));
        return next ? tr("Next: %1, %2").arg(inShort(words(next->title)), numberOf(*due))
                    : tr("Next: done, %1").arg(numberOf(*due));
    }
    if (const auto planned = firstPlanned())
        return tr("Next: take up %1").arg(numberOf(*planned));
    if (!m_walk.rack.empty())
        return tr("Next: %1").arg(inShort(words(m_walk.rack.front().after)));
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
    QString cannot;
    if (m_isPaused)
        cannot = tr("The walk is paused. P goes on.");
    else if (!m_inHand && !dueOnRack() && !firstPlanned() && m_walk.rack.empty())
        cannot = tr("Nothing is ready to press.");
    const bool hadFocus = m_next->hasFocus();
    if (m_next->isEnabled() == cannot.isEmpty())
        return;
    m_next->setCannot(cannot);
    // A key that cannot be pressed loses the keyboard; the list keeps it in the place.
    if (hadFocus && !cannot.isEmpty())
        (m_isPaused ? static_cast<QWidget*>(m_pause) : static_cast<QWidget*>(m_aside))->setFocus();
}

void PressWalkPlace::showRack() {
    if (!m_shop)
        return;
    std::vector<RackRow> rows;
    const auto add = [&](GarmentId id, RackRow::State state, const QString& text, const QString& digits) {
        const Garment& garment = garmentOf(id);
        rows.push_back({id, state, numberOf(id), garmentInShort(m_shop->facts, garment), text, digits,
                        outlineName(m_shop->facts, garment), clothOf(m_shop->facts, garment)});
    };
    for (const RackEntry& entry : m_walk.rack) {
        const auto count = m_counts.of(entry.garment);
        const QString then = inShort(words(entry.after));
        if (!count || count->isOver())
            add(entry.garment, RackRow::State::Due, tr("%1 now").arg(words(withCapital(then.toStdString()))),
                count ? QLatin1Char('+') + clockOf(count->secondsOver()) : QString());
        else if (count->isAskew)
            add(entry.garment, RackRow::State::Askew, tr("Clock set back, count again"), {});
        else if (count->secondsLeft() <= kSoon)
            add(entry.garment, RackRow::State::Soon, tr("Soon, %1").arg(then), clockOf(count->secondsLeft()));
        else
            add(entry.garment, RackRow::State::Cooling, tr("Then %1").arg(then),
                clockOf(count->secondsLeft()));
    }
    for (const WalkRun& run : m_walk.runs)
        for (const WalkEntry& entry : run.entries)
            if (entry.state == WalkState::OnPress && m_inHand != entry.garment)
                if (const RouteStep* step = openStep(entry.garment))
                    add(entry.garment, RackRow::State::PutBy,
                        tr("Put by: %1").arg(inShort(words(step->title))), {});
    m_rack->setVisible(!rows.empty());
    m_rackEmpty->setVisible(rows.empty());
    m_rackCard->setCount(rows.empty() ? QString() : QString::number(rows.size()));
    m_rack->rack().show(std::move(rows));
}

} // namespace holdfast::app

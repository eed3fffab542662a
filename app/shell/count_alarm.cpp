// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/count_alarm.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/shell/to_front.h"

#include <QApplication>
#include <QEvent>
#include <QWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kKnocksWhenTooLong = 3;

} // namespace

CountAlarm::CountAlarm(ShopDesk& desk, QWidget& window)
    : QObject(&window)
    , m_desk(desk)
    , m_window(window) {
    connect(&desk, &ShopDesk::countsEnded, this, &CountAlarm::ring);
    connect(&desk, &ShopDesk::knockAsked, this, &CountAlarm::knock);
}

void CountAlarm::setWays(Ways ways) {
    m_ways = std::move(ways);
    m_sounds.reset();
    m_notice.reset();
}

SoundPlayer& CountAlarm::sounds() {
    if (!m_sounds) {
        m_sounds = m_ways.sounds();
        connect(m_sounds.get(), &SoundPlayer::played, this, [this] {
            if (std::exchange(m_isTried, false))
                m_desk.say(
                    tr("The sound was played. If you heard nothing, turn up the sound of this computer."));
        });
        connect(m_sounds.get(), &SoundPlayer::failed, this, [this] {
            if (std::exchange(m_isTried, false))
                emit m_desk.failed(
                    tr("This computer has no sound service that answers, so a count ends without a "
                       "sound. The screen still shows it."));
        });
    }
    return *m_sounds;
}

void CountAlarm::knock() {
    const Loudness loudness = keptLoudness();
    if (loudness == Loudness::Off) {
        m_desk.say(tr("The sound is off. The screen still shows the end of a count."));
        return;
    }
    m_isTried = true;
    sounds().play(knockWave(loudness));
}

void CountAlarm::ring(const std::vector<EndedCount>& counts) {
    QStringList said;
    for (const EndedCount& count : counts)
        said << wordsOf(count);
    said.removeAll(QString());
    if (said.isEmpty())
        return;
    const bool isTooLong = std::ranges::any_of(counts, &EndedCount::isTooLong);
    const bool isHeat = std::ranges::any_of(counts, &EndedCount::isHeat);
    if (const Loudness loudness = keptLoudness(); loudness != Loudness::Off)
        sounds().play(knockWave(loudness, isTooLong ? kKnocksWhenTooLong : 1));
    emit rang(said.join(u' '));
    if (!m_window.isActiveWindow())
        notify(said.join(u'\n'), isHeat);
}

QString CountAlarm::wordsOf(const EndedCount& count) const {
    const ReckonedShop& shop = *m_desk.shop();
    // It may have been finished or cancelled on the other laptop in this very moment.
    const auto assessed = shop.assessments.find(count.garment);
    if (assessed == shop.assessments.end() || !assessed->second.progress.underway)
        return {};
    const Assessment& assessment = assessed->second;
    const QString number = garmentNumber(shop.facts, shop.facts.garments.at(count.garment));
    if (count.isTooLong)
        return tr("%1 has been under heat too long: lift it now.").arg(number);
    if (count.isHeat)
        return tr("%1: lift it now.").arg(number);
    const std::size_t next = *assessment.progress.underway + 1;
    if (next >= assessment.route.steps.size())
        return tr("%1 is cool enough.").arg(number);
    return tr("%1 is cool enough: %2.").arg(number, inShort(words(assessment.route.steps[next].title)));
}

void CountAlarm::notify(const QString& summary, bool isUrgent) {
    if (!m_notice) {
        m_notice = std::make_unique<DesktopNotice>(m_ways.bus());
        connect(m_notice.get(), &DesktopNotice::chosen, this, &CountAlarm::showWalk);
        m_window.window()->installEventFilter(this);
    }
    m_notice->show(summary, tr("Press walk"), isUrgent);
    QApplication::alert(m_window.window());
}

void CountAlarm::showWalk(const QString& activationToken) {
    bringToFront(*m_window.window(), activationToken);
    emit walkAsked();
}

// The window came to the front: what the notice says is seen there.
bool CountAlarm::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::WindowActivate && m_notice && watched == m_window.window())
        m_notice->withdraw();
    return QObject::eventFilter(watched, event);
}

} // namespace holdfast::app

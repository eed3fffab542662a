// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/count_watch.h"

#include <algorithm>

namespace holdfast::app {

namespace {

using std::chrono::milliseconds;

constexpr milliseconds kShortestWait{20};
constexpr milliseconds kLongestWait{250}; // a timer stops while the machine sleeps, a count does not

} // namespace

CountWatch::CountWatch(const Clock& clock, QObject* parent)
    : QObject(parent)
    , m_counts(clock) {
    m_next.setSingleShot(true);
    connect(&m_next, &QTimer::timeout, this, &CountWatch::look);
}

void CountWatch::see(const ReckonedShop& shop) {
    m_counts.see(shop);
    m_mostOver = shop.facts.settings.mostOverUnderHeat;
    // A listener may ask for the shop that is only just being made.
    m_next.start(0);
}

bool CountWatch::isTooLong(const StepCount& count) const {
    return count.isHeat && count.isOver() && count.left <= -m_mostOver;
}

void CountWatch::look() {
    std::vector<EndedCount> ended;
    std::map<GarmentId, Said> said;
    for (const StepCount& count : m_counts.all()) {
        if (!count.isOver())
            continue;
        const bool isLong = isTooLong(count);
        const auto known = m_said.find(count.garment);
        const bool wasSaid = known != m_said.end() && known->second.startedAt == count.startedAt;
        const bool isNews = !wasSaid && (count.isHeat || m_hasLooked);
        if (isNews || (wasSaid && isLong && !known->second.isTooLong))
            ended.push_back({count.garment, count.isHeat, isLong});
        said[count.garment] = {count.startedAt, isLong};
    }
    m_said = std::move(said);
    m_hasLooked = true;
    waitForNext();
    if (!ended.empty())
        emit this->ended(ended);
}

void CountWatch::waitForNext() {
    std::optional<milliseconds> soonest;
    const auto consider = [&](milliseconds wait) {
        if (!soonest || wait < *soonest)
            soonest = wait;
    };
    for (const StepCount& count : m_counts.all()) {
        if (count.isAskew)
            continue;
        if (!count.isOver())
            consider(count.left);
        else if (count.isHeat && !isTooLong(count))
            consider(count.left + m_mostOver);
    }
    if (soonest)
        m_next.start(std::clamp(*soonest, kShortestWait, kLongestWait));
    else
        m_next.stop();
}

} // namespace holdfast::app

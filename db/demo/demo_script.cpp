// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_script.h"

#include <algorithm>

namespace holdfast::db::demo {

Script::Script(const Now& end)
    : m_end(end)
    , m_hands(std::make_shared<Instant>(end.instant))
    , m_shop(Shop::createInMemory([hands = m_hands] { return *hands; })) {}

void Script::at(int onDay, Seconds timeOfDay, std::function<void()> work) {
    m_events.push_back({time(onDay, timeOfDay), std::move(work)});
}

void Script::play() {
    std::ranges::stable_sort(m_events, {}, &Event::time);
    if (!m_events.empty())
        *m_hands = m_end.toInstant(m_events.front().time);
    for (const Event& event : m_events) {
        waitUntil(event.time);
        try {
            event.work();
        } catch (const Stopped& stopped) {
            const Error& error = stopped.error;
            throw Stopped{{said("The demo stopped at {time}: {why}",
                                {{"time", isoLocalMinute(event.time)}, {"why", error.message}}),
                           error.field}};
        }
    }
    waitUntil(m_end.local());
}

void Script::waitUntil(LocalTime time) {
    *m_hands = std::max(*m_hands, m_end.toInstant(time));
}

} // namespace holdfast::db::demo

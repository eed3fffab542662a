// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The script that the demo's shop is played from: what happens on which day at what time, and a clock that
// moves through it. Each subject writes its own part; the parts are played together in the order of time.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace holdfast::db::demo {

// What one of the program's own actions refused. Thrown only while a script is played; makeDemoShop is its
// door.
struct Stopped {
    Error error;
};

template <class T>
T done(Result<T> result) {
    if (!result.ok())
        throw Stopped{result.error()};
    return std::move(result).value();
}

// What the parts of a script call each other's things by.
struct Named {
    std::map<std::string, BlankStyleId> styles; // "Tee"
    std::map<std::string, FilmId> films;        // by shade, "Dusk"
    std::map<int, RollId> rolls;                // 9 is written R-09
    std::map<std::string, PlaceId> places;
    std::map<std::string, PressId> presses;
    std::map<std::int64_t, OrderId> orders; // by number
};

constexpr Seconds clockAt(int hour, int minute, int second = 0) {
    return std::chrono::hours{hour} + std::chrono::minutes{minute} + Seconds{second};
}

class Script {
public:
    // `end` is the moment at which the script ends, on its day 0.
    explicit Script(const Now& end);

    // Day 0 is the last, day −1 the day before. What is at one time is played as it was written down.
    // REQUIRES: not called while playing.
    void at(int day, Seconds timeOfDay, std::function<void()> work);
    // Throws Stopped, with the day and time it happened at.
    void play();

    LocalDate day(int day) const { return m_end.today() + Days{day}; }
    LocalTime time(int onDay, Seconds timeOfDay) const { return LocalTime{day(onDay)} + timeOfDay; }

    Shop& shop() { return *m_shop; }
    Now now() const { return {*m_hands, m_end.offset}; }
    void wait(Seconds span) { *m_hands += span; }
    // Never moves the clock back: past that time it returns at once.
    void waitUntil(LocalTime time);

    Named named;

private:
    struct Event {
        LocalTime time{};
        std::function<void()> work;
    };

    Now m_end;
    std::shared_ptr<Instant> m_hands; // of the clock that the shop reads
    std::unique_ptr<Shop> m_shop;
    std::vector<Event> m_events;
};

} // namespace holdfast::db::demo

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A shop at the fair table for the tests of promises: Tuesday 10 November 2026, 11:42; working hours are
// 9 to 17 from Monday to Friday, the wash takes an hour and drying twelve, rest is a day. Cutting takes no
// time unless a test says otherwise.

#include "core/facts/shop_facts.h"
#include "core/orders/promise.h"

#include <string>
#include <vector>

namespace holdfast::fair_days {

inline constexpr BlankStyleId kTee{1};
inline constexpr ColourId kMoss{1};
inline constexpr ColourId kFog{2};
inline constexpr FilmId kDusk{1};
inline const LocalDate kTuesday = localDate(2026, 11, 10);

inline LocalTime at(int daysOn, int hour, int minute = 0, int second = 0) {
    return LocalTime{kTuesday + Days{daysOn}} + Hours{hour} + Minutes{minute} + Seconds{second};
}

inline Now atTheTable() {
    Now now;
    now.offset = Hours{1};
    now.instant = Instant{at(0, 11, 42).time_since_epoch()} - now.offset;
    return now;
}

inline Now now(LocalTime time) {
    Now moment;
    moment.instant = Instant{time.time_since_epoch()};
    return moment;
}

// Washed Fog and unwashed Moss in M, five each, and a roll of one film.
struct FairShop {
    ShopFacts facts;
    Promised promised; // nothing but the film that is there
    std::int64_t ids = 100;

    FairShop() {
        facts.settings.planMarginPercent = 0;
        facts.settings.cutTakes = Minutes{0};
        facts.settings.weedingTakes = Seconds{0};
        BlankStyle tee;
        tee.id = kTee;
        tee.name = "Tee";
        tee.sizes = {"M"};
        tee.colours = {{kMoss, "Moss", 0}, {kFog, "Fog", 0}};
        tee.weight = {160};
        facts.styles.add(tee);
        Film film;
        film.id = kDusk;
        film.finish = "Marram Soft";
        film.shade = "Dusk";
        facts.films.add(film);
        promised.film = {{kDusk, Millimetres{500}, Millimetres{5000}, std::nullopt}};
        addLot(kFog, 5, addLoad(at(-3, 17), true));
        addLot(kMoss, 5);
    }

    WashLoadId addLoad(LocalTime started, bool isDry) {
        WashLoad load;
        load.id = {++ids};
        load.startedAt = Instant{started.time_since_epoch()} - Hours{1};
        if (isDry)
            load.dryAt = load.startedAt + Hours{13};
        facts.loads.add(load);
        return load.id;
    }

    BlankLotId addLot(ColourId colour, std::int64_t units, std::optional<WashLoadId> load = {}) {
        BlankLot lot;
        lot.id = {++ids};
        lot.style = kTee;
        lot.size = "M";
        lot.colour = colour;
        lot.unitsLeft = units;
        lot.lastLoad = load;
        facts.lots.add(lot);
        return lot.id;
    }

    void change(auto&& change) { change(facts.settings); }

    void changeStyle(auto&& change) {
        BlankStyle tee = facts.styles.at(kTee);
        change(tee);
        facts.styles = Roster<BlankStyle>{{tee}};
    }

    // What promises already given take of the hands.
    Promised with(std::vector<PromisedWork> work) const {
        Promised all = promised;
        all.work = std::move(work);
        return all;
    }

    // One promised garment that keeps a unit of an unwashed lot.
    void keepUnwashed(BlankLotId lot) {
        keep(lot);
        promised.washes.push_back({at(0, 11, 42), facts.styles.at(kTee).weight});
    }

    // One promised garment that keeps a unit of a lot.
    void keep(BlankLotId lot) {
        Order order;
        order.id = {++ids};
        Garment garment;
        garment.id = {++ids};
        garment.order = order.id;
        garment.style = kTee;
        garment.lot = lot;
        facts.orders.add(order);
        facts.garments.add(garment);
    }
};

inline AskedGarment aTee(ColourId colour, Seconds pressTime = Minutes{10}) {
    return {kTee, "M", colour, {{kDusk, {}, {}}}, pressTime};
}

// "wash tonight, press Wed, …"
inline std::string told(const std::vector<PromiseStep>& path) {
    std::string text;
    for (const PromiseStep& step : path)
        text += (text.empty() ? "" : ", ") + step.words.english() + " " + step.when.english();
    return text;
}

} // namespace holdfast::fair_days

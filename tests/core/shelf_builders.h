// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A film shelf for tests: days of autumn 2026, readings, a film, a roll and decals that wait, in their usual
// case. The odd fact stands in the test.

#include "core/facts/shop_facts.h"
#include "core/film/roll_condition.h"
#include "core/film/use_first.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace holdfast::test {

using namespace literals;

inline constexpr FilmId kShelfFilm{1};
inline constexpr PlaceId kUpperShelf{10};
inline constexpr PlaceId kCellar{11};

// The workshop's clock runs with UTC here unless a test says otherwise.
inline Instant at(LocalDate date, int hour = 0, int minute = 0) {
    return Instant{(LocalTime{date} + Hours{hour} + Minutes{minute}).time_since_epoch()};
}
inline LocalDate nov(unsigned day) {
    return localDate(2026, 11, day);
}
inline Now noonOf(LocalDate date) {
    return {.instant = at(date, 12), .offset = std::chrono::seconds{0}};
}

// One reading an hour, the same all the time, from the first instant to the last.
inline ClimateSeries steady(Instant from, Instant to, double temperature, double humidity) {
    ClimateSeries series;
    for (Instant instant = from; instant <= to; instant += Hours{1})
        series.push_back({instant, {temperature}, {humidity}});
    return series;
}

inline std::shared_ptr<const ClimateSeries> shared(ClimateSeries series) {
    return std::make_shared<const ClimateSeries>(std::move(series));
}

inline Film aShelfFilm() {
    Film film;
    film.id = kShelfFilm;
    film.finish = "Marram Soft";
    film.shade = "Dusk";
    film.shelfLife = Days{365};
    return film;
}

// Received 1 Nov 2026, on the shelf since, five metres of half a metre's width.
inline FilmRoll aRoll(int number = 9) {
    FilmRoll roll;
    roll.id = {100 + number};
    roll.number = number;
    roll.film = kShelfFilm;
    roll.width = 500_mm;
    roll.left = 5000_mm;
    roll.receivedOn = nov(1);
    roll.stays = {{kUpperShelf, at(nov(1))}};
    return roll;
}

// Orders 401, 402, … each with one garment that wants one decal, promised a day apart from 20 Nov on.
class Waiting {
public:
    DecalId decal(Millimetres width, Millimetres height, FilmId film = kShelfFilm) {
        const auto number = static_cast<std::int64_t>(m_orders.size()) + 401;
        Order order;
        order.id = {number};
        order.number = number;
        order.promised = LocalTime{nov(20) + Days{number - 401}};
        Decal wanted;
        wanted.id = {number * 10};
        wanted.garment = {number};
        wanted.film = film;
        wanted.width = width;
        wanted.height = height;
        Garment garment;
        garment.id = {number};
        garment.order = order.id;
        garment.decals = {wanted};
        m_orders.push_back(order);
        m_garments.push_back(garment);
        return wanted.id;
    }
    Order& lastOrder() { return m_orders.back(); }
    Garment& lastGarment() { return m_garments.back(); }
    Decal& lastDecal() { return m_garments.back().decals.back(); }

    void putInto(ShopFacts& facts) const {
        facts.orders = Roster<Order>{m_orders};
        facts.garments = Roster<Garment>{m_garments};
    }

private:
    std::vector<Order> m_orders;
    std::vector<Garment> m_garments;
};

// A shelf of one film; a roll is good until its use-by unless its condition says otherwise.
class ShelfOfOneFilm {
public:
    Film film = aShelfFilm();
    Waiting waiting;
    RecentUse recentUse;
    Now now = noonOf(nov(11));
    ShopSettings settings; // gap 8 mm, edge margin 6 mm

    FilmRoll& roll(int number, Millimetres left, std::optional<LocalDate> useBy = std::nullopt) {
        m_rolls.push_back(aRoll(number));
        m_rolls.back().left = left;
        RollCondition condition;
        condition.roll = m_rolls.back().id;
        condition.useBy = useBy;
        m_conditions[condition.roll] = condition;
        return m_rolls.back();
    }
    RollCondition& condition(int number) { return m_conditions.at(aRoll(number).id); }

    ShopFacts facts() const {
        ShopFacts facts;
        facts.settings = settings;
        facts.films = Roster<Film>{{film}};
        facts.rolls = Roster<FilmRoll>{m_rolls};
        waiting.putInto(facts);
        return facts;
    }
    RollConditions conditions() const { return RollConditions{m_conditions}; }
    Allotment allotment() const { return allot(facts(), conditions(), recentUse, now); }

private:
    std::vector<FilmRoll> m_rolls;
    std::map<RollId, RollCondition> m_conditions;
};

// The film, its one roll and the readings of its places, as of noon of the 11th.
struct Shelf {
    Film film = aShelfFilm();
    FilmRoll roll = aRoll();
    ClimateHistory climate;
    Now now = noonOf(nov(11));
    ShopSettings settings;

    RollCondition reckon() const {
        ShopFacts facts;
        facts.settings = settings;
        facts.films = Roster<Film>{{film}};
        facts.rolls = Roster<FilmRoll>{{roll}};
        return ClimateReckoner{}.reckon(facts, climate, now).at(roll.id);
    }
};

} // namespace holdfast::test

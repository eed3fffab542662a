// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A workshop played through event by event, for tests of promises. Its rules are those of the trade, written
// down here once more and on their own:
//
//  - One maker, in opening hours: takes up the work that is promised first of what can be done. A garment on
//  the
//    press is finished; none is begun that would not be off the press by closing. Cutting may be broken off.
//  - An order is cut (film by film) once its film is there; a garment is pressed once it is cut and its blank
//  dry.
//  - When the workshop closes, promised blanks that are there go into the washer, those promised first in
//  front,
//    as many as it holds, load after load until 21:00.
//  - Blanks and film that are wanting are ordered at once and come when the workshop opens after their lead
//  time.
// Deterministic for a seed.

#include "core/orders/promise.h"

#include <map>
#include <random>
#include <vector>

namespace holdfast::test {

struct SimulatedGarment {
    int kind = 0;
    Seconds pressTime{0};           // as planned
    Seconds pressTakes{0};          // as it turns out
    std::optional<LocalTime> there; // to be washed from then on; none: it is washed or needs no wash
    LocalTime dryAt = LocalTime::max();
    bool isOnPress = false;
    bool isPressed = false;
};

struct SimulatedOrder {
    LocalTime promised{};
    Hours rest{0};
    std::vector<DecalToCut> decals;
    std::vector<SimulatedGarment> garments;
    LocalTime filmAt{};
    Seconds cutting{0};      // as planned
    Seconds cuttingTakes{0}; // as it turns out
    Seconds cut{0};          // of that behind it
    LocalTime pressedAt{};

    bool isCut() const { return cut >= cuttingTakes; }
    bool isDone() const;
    bool isKept() const { return isDone() && pressedAt + rest <= promised; }
};

class Workshop {
public:
    // `overrun` is by how much work takes longer than planned, on the average: each piece by nothing to twice
    // that.
    Workshop(unsigned seed, int marginPercent, double overrun);

    // A week of orders, and on until all are pressed.
    void play();
    const std::vector<SimulatedOrder>& orders() const { return m_orders; }

private:
    struct Stock {
        BlankLotId dry;
        BlankLotId drying;
        BlankLotId unwashed;
        std::int64_t dryUnits = 0;
        std::int64_t dryingUnits = 0;
        std::int64_t unwashedUnits = 0;
    };

    std::int64_t between(std::int64_t low, std::int64_t high) {
        return std::uniform_int_distribution<std::int64_t>{low, high}(m_random);
    }
    Seconds overrunOf(Seconds planned);

    void setUpShop();
    void setUpStock();
    void planArrivals();
    void takeOrder(LocalTime at);
    SimulatedOrder wantedOrder();
    Promised promisedNow(LocalTime at) const;
    ShopFacts factsNow() const;
    void keepBlank(SimulatedGarment& garment, LocalTime at);
    void keepFilm(SimulatedOrder& order, LocalTime at);
    void deliver(LocalTime at);

    LocalTime opensNext(LocalDate from) const;
    std::optional<OpeningHours> hoursOn(LocalDate date) const;
    void workDay(LocalDate date);
    void workUntil(LocalTime from, LocalTime closes);
    void washEvening(LocalDate date, LocalTime closes);
    bool startLoad(LocalTime at);
    void takeOrdersUntil(LocalTime until);
    LocalTime nextChange(LocalTime after, LocalTime closes) const;

    struct Task {
        SimulatedOrder* order = nullptr;
        SimulatedGarment* garment = nullptr; // none: cutting
    };
    Task nextTask(LocalTime at, LocalTime closes);

    std::mt19937 m_random;
    std::mt19937 m_luck; // of how long work takes: the same orders come whatever it is
    double m_overrun;
    ShopSettings m_settings;
    Roster<BlankStyle> m_styles;
    Roster<Film> m_films;
    WashLoad m_running;         // that dries when the week begins
    std::vector<Stock> m_stock; // by kind
    struct OnShelf {
        FilmId film;
        Millimetres left; // beside what is promised
    };
    std::vector<OnShelf> m_rolls;
    std::vector<std::pair<LocalTime, OnShelf>> m_rollsToCome;
    std::vector<LocalTime> m_arrivals;
    std::size_t m_nextArrival = 0;
    std::vector<SimulatedOrder> m_orders;
    std::optional<LocalTime> m_washerStarted; // the last load
    LocalDate m_firstDay{};
};

} // namespace holdfast::test

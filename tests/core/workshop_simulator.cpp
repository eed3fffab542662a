// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/workshop_simulator.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace holdfast::test {

namespace {

const LocalDate kMonday = localDate(2026, 11, 9);
constexpr int kStyles = 3;
constexpr int kKinds = 6; // a style in two colours
constexpr int kFilms = 3;
constexpr Millimetres kRollWidth{500};
constexpr Millimetres kNewRoll{12'000};
constexpr Days kGivenUp{300};

Now nowAt(LocalTime at) {
    Now now;
    now.instant = Instant{at.time_since_epoch()};
    return now;
}

BlankStyleId styleOf(int kind) {
    return {1 + kind / 2};
}
ColourId colourOf(int kind) {
    return {1 + kind % 2};
}

// Decals of one size in rows across the roll.
Millimetres rowsOf(std::int64_t count, Millimetres width, Millimetres height, const ShopSettings& settings) {
    const std::int64_t clear = kRollWidth.value - 2 * settings.edgeMargin.value;
    const std::int64_t inRow = std::max<std::int64_t>(1, (clear + settings.decalGap.value) /
                                                             (width.value + settings.decalGap.value));
    return {(count + inRow - 1) / inRow * (height.value + settings.decalGap.value)};
}

} // namespace

bool SimulatedOrder::isDone() const {
    return std::ranges::all_of(garments, &SimulatedGarment::isPressed);
}

Workshop::Workshop(unsigned seed, int marginPercent, double overrun)
    : m_random(seed)
    , m_luck(seed + 1'000'000)
    , m_overrun(overrun) {
    setUpShop();
    m_settings.planMarginPercent = marginPercent;
    setUpStock();
    planArrivals();
}

Seconds Workshop::overrunOf(Seconds planned) {
    const double longer = std::uniform_real_distribution<double>{0, 2 * m_overrun}(m_luck);
    return Seconds{std::llround(static_cast<double>(planned.count()) * (1 + longer))};
}

void Workshop::setUpShop() {
    m_firstDay = kMonday;
    ShopSettings& settings = m_settings;
    for (std::size_t weekday = 0; weekday < 7; ++weekday) {
        settings.week[weekday].reset();
        const bool isWeekend = weekday == 0 || weekday == 6;
        if (between(1, 10) > (isWeekend ? 8 : 1)) {
            const std::int64_t opens = between(16, 24) * 30; // 8:00 to 12:00
            settings.week[weekday] = OpeningHours{Minutes{opens}, Minutes{opens + between(6, 18) * 30}};
        }
    }
    settings.week[3] = OpeningHours{};
    for (std::int64_t closed = between(0, 4); closed > 0; --closed)
        settings.closedDays.push_back(kMonday + Days{between(0, 25)});
    settings.washerHolds = {between(5, 60) * 100};
    settings.washTakes = Minutes{between(30, 150)};
    settings.dryingTakes = Hours{between(3, 30)};
    settings.restBeforeWash = Hours{between(0, 3) * 24};
    settings.blankLeadTime = Days{between(1, 8)};
    settings.filmLeadTime = Days{between(1, 8)};
    settings.cutTakes = Minutes{between(0, 8)};
    settings.weedingTakes = Seconds{between(20, 180)};
}

void Workshop::setUpStock() {
    for (int style = 0; style < kStyles; ++style) {
        BlankStyle made;
        made.id = {1 + style};
        made.name = "Style " + std::to_string(style);
        made.sizes = {"M"};
        made.colours = {{ColourId{1}, "Moss", 0}, {ColourId{2}, "Fog", 0}};
        made.weight = {between(80, 600)};
        if (between(1, 6) == 1)
            made.notPrewashedBecause = "waxed cloth";
        m_styles.add(made);
    }
    for (int film = 0; film < kFilms; ++film) {
        Film made;
        made.id = {1 + film};
        made.finish = "Film";
        made.shade = std::to_string(film);
        made.hasGrain = true; // as they were drawn
        made.rollWidth = kRollWidth;
        m_films.add(made);
        for (std::int64_t rolls = between(0, 3); rolls > 0; --rolls)
            m_rolls.push_back({made.id, {between(100, 5000)}});
    }
    m_running.id = {1};
    m_running.startedAt = nowAt(LocalTime{kMonday}).instant - Hours{between(2, 8)};
    std::int64_t id = 0;
    for (int kind = 0; kind < kKinds; ++kind) {
        Stock stock;
        stock.dry = {++id};
        stock.drying = {++id};
        stock.unwashed = {++id};
        stock.dryUnits = between(0, 4);
        stock.dryingUnits = m_styles.at(styleOf(kind)).washedFirst() ? between(0, 2) : 0;
        stock.unwashedUnits = between(0, 25);
        m_stock.push_back(stock);
    }
}

// At the workshop and at fairs, seven days of them: from a quiet week to one with too much in it.
void Workshop::planArrivals() {
    const std::int64_t orders = between(2, 16);
    for (std::int64_t order = 0; order < orders; ++order)
        m_arrivals.push_back(LocalTime{kMonday + Days{between(0, 6)}} + Hours{9} +
                             Minutes{between(0, 11 * 60)});
    std::ranges::sort(m_arrivals);
}

std::optional<OpeningHours> Workshop::hoursOn(LocalDate date) const {
    for (const LocalDate closed : m_settings.closedDays)
        if (closed == date)
            return std::nullopt;
    return m_settings.week[std::chrono::weekday{date}.c_encoding()];
}

LocalTime Workshop::opensNext(LocalDate from) const {
    while (!hoursOn(from))
        from += Days{1};
    return LocalTime{from} + hoursOn(from)->opens;
}

// ── orders ──

SimulatedOrder Workshop::wantedOrder() {
    SimulatedOrder order;
    order.rest = m_settings.restBeforeWash;
    const std::int64_t garments = between(1, 5) < 5 ? between(1, 4) : between(5, 20);
    const int kind = static_cast<int>(between(0, kKinds - 1));
    const FilmId film{between(1, kFilms)};
    const Millimetres width{between(40, 300)};
    const Millimetres height{between(40, 300)};
    const bool isLettering = between(1, 3) == 1;
    const Seconds pressTime{between(90, 900)};
    for (std::int64_t at = 0; at < garments; ++at) {
        SimulatedGarment garment;
        garment.kind = between(1, 4) == 1 ? static_cast<int>(between(0, kKinds - 1)) : kind;
        garment.pressTime = pressTime;
        garment.pressTakes = overrunOf(pressTime);
        order.garments.push_back(garment);
        order.decals.push_back({film, width, height, isLettering});
    }
    order.cutting = m_settings.cutTakes;
    for (const DecalToCut& decal : order.decals) {
        const double area =
            std::ceil(static_cast<double>(decal.width.value * decal.height.value) * 25 / 10'000);
        const double plain = static_cast<double>(m_settings.weedingTakes.count()) + area;
        order.cutting += Seconds{std::llround(decal.isLettering ? std::ceil(plain * 1.5) : plain)};
    }
    order.cuttingTakes = overrunOf(order.cutting);
    return order;
}

ShopFacts Workshop::factsNow() const {
    ShopFacts facts;
    facts.settings = m_settings;
    facts.styles = m_styles;
    facts.films = m_films;
    facts.loads.add(m_running);
    if (m_washerStarted) {
        WashLoad last;
        last.id = {2};
        last.startedAt = nowAt(*m_washerStarted).instant;
        facts.loads.add(last);
    }
    const auto addLot = [&](BlankLotId id, int kind, std::int64_t units, std::optional<WashLoadId> load) {
        BlankLot lot;
        lot.id = id;
        lot.style = styleOf(kind);
        lot.size = "M";
        lot.colour = colourOf(kind);
        lot.unitsLeft = units;
        lot.lastLoad = load;
        facts.lots.add(lot);
    };
    WashLoad earlier = m_running;
    earlier.id = {3};
    earlier.startedAt -= Days{3};
    earlier.dryAt = earlier.startedAt + Hours{30};
    facts.loads.add(earlier);
    for (int kind = 0; kind < kKinds; ++kind) {
        const Stock& stock = m_stock[static_cast<std::size_t>(kind)];
        addLot(stock.dry, kind, stock.dryUnits, earlier.id);
        addLot(stock.drying, kind, stock.dryingUnits, m_running.id);
        addLot(stock.unwashed, kind, stock.unwashedUnits, std::nullopt);
    }
    return facts;
}

Promised Workshop::promisedNow(LocalTime) const {
    Promised promised;
    std::vector<const SimulatedOrder*> open;
    for (const SimulatedOrder& order : m_orders)
        if (!order.isDone())
            open.push_back(&order);
    std::ranges::stable_sort(open, {}, [](const SimulatedOrder* order) { return order->promised; });
    for (const SimulatedOrder* order : open) {
        // The maker knows what is done, and reckons the rest as planned.
        Seconds left = order->isCut() ? Seconds{0} : std::max(Seconds{0}, order->cutting - order->cut);
        for (const SimulatedGarment& garment : order->garments) {
            if (!garment.isPressed) {
                left += garment.pressTime;
                promised.longestGarment = std::max(promised.longestGarment, garment.pressTime);
            }
            if (garment.there)
                promised.washes.push_back({*garment.there, m_styles.at(styleOf(garment.kind)).weight});
        }
        promised.work.push_back({order->promised - order->rest, left});
    }
    for (const OnShelf& roll : m_rolls)
        promised.film.push_back({roll.film, kRollWidth, roll.left, std::nullopt});
    return promised;
}

void Workshop::takeOrder(LocalTime at) {
    deliver(at);
    SimulatedOrder order = wantedOrder();
    std::vector<AskedGarment> asked;
    for (std::size_t garment = 0; garment < order.garments.size(); ++garment) {
        const int kind = order.garments[garment].kind;
        asked.push_back(
            {styleOf(kind), "M", colourOf(kind), {order.decals[garment]}, order.garments[garment].pressTime});
    }
    const Result<Promise> promise = promiseFor(asked, factsNow(), promisedNow(at), nowAt(at));
    ASSERT_TRUE(promise.ok()) << promise.error().message.english();
    order.promised = promise->readyAt;
    if (between(1, 4) == 1) // the customer comes later anyway
        order.promised += Days{between(1, 9)};
    keepFilm(order, at);
    for (SimulatedGarment& garment : order.garments)
        keepBlank(garment, at);
    m_orders.push_back(std::move(order));
}

void Workshop::keepBlank(SimulatedGarment& garment, LocalTime at) {
    Stock& stock = m_stock[static_cast<std::size_t>(garment.kind)];
    const bool isWashed = m_styles.at(styleOf(garment.kind)).washedFirst();
    if (stock.dryUnits > 0 || (!isWashed && stock.unwashedUnits > 0)) {
        --(stock.dryUnits > 0 ? stock.dryUnits : stock.unwashedUnits);
        garment.dryAt = at;
    } else if (stock.dryingUnits > 0) {
        --stock.dryingUnits;
        garment.dryAt =
            LocalTime{m_running.startedAt.time_since_epoch()} + m_settings.washTakes + m_settings.dryingTakes;
    } else if (stock.unwashedUnits > 0) {
        --stock.unwashedUnits;
        garment.there = at;
    } else {
        const LocalTime comes = std::max(at, opensNext(dateOf(at) + m_settings.blankLeadTime));
        (isWashed ? garment.there.emplace() : garment.dryAt) = comes;
    }
}

// As many rows from each roll as it has left; where they do not reach, a new roll is ordered.
void Workshop::keepFilm(SimulatedOrder& order, LocalTime at) {
    const DecalToCut& decal = order.decals.front();
    auto count = static_cast<std::int64_t>(order.decals.size());
    std::vector<std::pair<OnShelf*, Millimetres>> taken;
    for (OnShelf& roll : m_rolls) {
        if (roll.film != decal.film)
            continue;
        std::int64_t here = count;
        while (here > 0 && rowsOf(here, decal.width, decal.height, m_settings) > roll.left)
            --here;
        if (here > 0)
            taken.emplace_back(&roll, rowsOf(here, decal.width, decal.height, m_settings));
        count -= here;
    }
    order.filmAt = at;
    if (count == 0) {
        for (auto& [roll, length] : taken)
            roll->left = roll->left - length;
        return;
    }
    order.filmAt = std::max(at, opensNext(dateOf(at) + m_settings.filmLeadTime));
    const Millimetres used =
        rowsOf(static_cast<std::int64_t>(order.decals.size()), decal.width, decal.height, m_settings);
    m_rollsToCome.push_back({order.filmAt, {decal.film, kNewRoll - used}});
}

void Workshop::deliver(LocalTime at) {
    std::erase_if(m_rollsToCome, [&](const auto& comes) {
        if (comes.first > at)
            return false;
        m_rolls.push_back(comes.second);
        return true;
    });
}

// ── work ──

void Workshop::takeOrdersUntil(LocalTime until) {
    while (m_nextArrival < m_arrivals.size() && m_arrivals[m_nextArrival] <= until)
        takeOrder(m_arrivals[m_nextArrival++]);
}

void Workshop::play() {
    const auto isAtWork = [this] {
        return m_nextArrival < m_arrivals.size() || !std::ranges::all_of(m_orders, &SimulatedOrder::isDone);
    };
    for (LocalDate date = m_firstDay; isAtWork() && date < m_firstDay + kGivenUp; date += Days{1})
        workDay(date);
}

void Workshop::workDay(LocalDate date) {
    const LocalTime midnight{date};
    if (const auto hours = hoursOn(date)) {
        takeOrdersUntil(midnight + hours->opens);
        workUntil(midnight + hours->opens, midnight + hours->closes);
        washEvening(date, midnight + hours->closes);
    }
    takeOrdersUntil(midnight + Days{1} - Seconds{1});
}

// The work promised first of what can be taken up now. Cutting may be broken off; a garment must be off the
// press by closing.
Workshop::Task Workshop::nextTask(LocalTime at, LocalTime closes) {
    Task next;
    const auto offer = [&](SimulatedOrder& order, SimulatedGarment* garment) {
        if (!next.order || order.promised - order.rest < next.order->promised - next.order->rest)
            next = {&order, garment};
    };
    for (SimulatedOrder& order : m_orders) {
        if (!order.isCut() && order.filmAt <= at)
            offer(order, nullptr);
        if (!order.isCut())
            continue;
        for (SimulatedGarment& garment : order.garments)
            if (!garment.isPressed && garment.dryAt <= at && at + garment.pressTime <= closes)
                offer(order, &garment);
    }
    return next;
}

LocalTime Workshop::nextChange(LocalTime after, LocalTime closes) const {
    LocalTime next = closes;
    const auto look = [&](LocalTime at) {
        if (at > after)
            next = std::min(next, at);
    };
    if (m_nextArrival < m_arrivals.size())
        look(m_arrivals[m_nextArrival]);
    for (const SimulatedOrder& order : m_orders) {
        if (order.isDone())
            continue;
        look(order.filmAt);
        for (const SimulatedGarment& garment : order.garments)
            look(garment.dryAt);
    }
    return next;
}

void Workshop::workUntil(LocalTime from, LocalTime closes) {
    LocalTime at = from;
    while (at < closes) {
        takeOrdersUntil(at);
        const Task task = nextTask(at, closes);
        const LocalTime change = nextChange(at, closes);
        if (!task.order) {
            at = change;
        } else if (!task.garment) {
            const Seconds worked = std::min(task.order->cuttingTakes - task.order->cut, change - at);
            task.order->cut += worked;
            at += worked;
        } else {
            // Orders that come meanwhile are promised while the garment is on the press.
            const LocalTime done = at + task.garment->pressTakes;
            task.garment->isPressed = true;
            task.order->pressedAt = std::max(task.order->pressedAt, done);
            at = done;
        }
    }
}

void Workshop::washEvening(LocalDate date, LocalTime closes) {
    const LocalTime last = std::max(closes, LocalTime{date} + Hours{21});
    LocalTime at = closes;
    while (at <= last) {
        takeOrdersUntil(at);
        if (startLoad(at)) {
            at += m_settings.washTakes;
        } else if (m_nextArrival < m_arrivals.size() && m_arrivals[m_nextArrival] <= last) {
            at = std::max(at, m_arrivals[m_nextArrival]);
        } else {
            return;
        }
    }
}

bool Workshop::startLoad(LocalTime at) {
    std::vector<std::pair<LocalTime, SimulatedGarment*>> dirty;
    for (SimulatedOrder& order : m_orders)
        for (SimulatedGarment& garment : order.garments)
            if (garment.there && *garment.there <= at)
                dirty.emplace_back(order.promised - order.rest, &garment);
    if (dirty.empty())
        return false;
    std::ranges::stable_sort(dirty, {}, &std::pair<LocalTime, SimulatedGarment*>::first);
    Grams filled;
    for (const auto& [promised, garment] : dirty) {
        const Grams weight = m_styles.at(styleOf(garment->kind)).weight;
        if (filled > Grams{} && filled + weight > m_settings.washerHolds)
            continue;
        filled = filled + weight;
        garment->there.reset();
        garment->dryAt = at + m_settings.washTakes + m_settings.dryingTakes;
    }
    m_washerStarted = at;
    return true;
}

} // namespace holdfast::test

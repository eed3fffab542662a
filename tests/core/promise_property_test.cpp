// Promises given one after the other, from a fixed seed: after each, everything promised so far must still
// fit, by a reckoning that works through the days hour by hour and knows nothing of how promises are made.

#include "core/orders/promise.h"
#include "tests/core/promise_builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <iostream>
#include <random>

using namespace holdfast;
using namespace holdfast::fair_days;

namespace {

struct Piece {
    LocalTime release{};
    LocalTime due{};
    Seconds work{0};
};

// Earliest due first of what is there, broken off whenever something more pressing comes: this meets all due
// times if any way does. Open hours are looked up minute by minute in the settings.
bool allFit(std::vector<Piece> pieces, const ShopSettings& settings, LocalTime from) {
    std::ranges::stable_sort(pieces, {}, &Piece::due);
    for (LocalDate date = dateOf(from); !pieces.empty(); date += Days{1}) {
        const std::optional<OpeningHours> open = settings.hoursOn(date);
        if (!open)
            continue;
        LocalTime moment = std::max(from, LocalTime{date} + open->opens);
        const LocalTime closes = LocalTime{date} + open->closes;
        while (moment < closes && !pieces.empty()) {
            const auto next =
                std::ranges::find_if(pieces, [&](const Piece& piece) { return piece.release <= moment; });
            LocalTime until = closes;
            for (const Piece& piece : pieces) {
                if (piece.release > moment)
                    until = std::min(until, piece.release);
            }
            if (next == pieces.end()) {
                moment = until;
                continue;
            }
            const LocalTime done = moment + next->work;
            if (done <= until) {
                if (done > next->due)
                    return false;
                moment = done;
                pieces.erase(next);
            } else {
                next->work -= until - moment;
                moment = until;
            }
        }
        if (std::ranges::any_of(pieces, [&](const Piece& piece) { return piece.due < closes; }))
            return false;
    }
    return true;
}

Seconds marginOn(Seconds work, int percent) {
    return Seconds{(work.count() * (100 + percent) + 99) / 100};
}

// When a promise's material is there, read from its path.
LocalTime releaseOf(const Promise& promise, const ShopSettings& settings, LocalTime now) {
    LocalTime release = now;
    for (const PromiseStep& step : promise.path) {
        if (step.stage == PromiseStage::Wash)
            release = std::max(release, step.at + settings.washTakes + settings.dryingTakes);
        if (step.stage == PromiseStage::BuyBlank || step.stage == PromiseStage::BuyFilm ||
            step.stage == PromiseStage::Dry)
            release = std::max(release, step.at);
    }
    return release;
}

LocalTime pressedAt(const Promise& promise) {
    return std::ranges::find(promise.path, PromiseStage::Press, &PromiseStep::stage)->at;
}

class RandomShop {
public:
    explicit RandomShop(unsigned seed)
        : m_random(seed) {}

    std::int64_t between(std::int64_t low, std::int64_t high) {
        return std::uniform_int_distribution<std::int64_t>{low, high}(m_random);
    }

    FairShop shop() {
        FairShop shop;
        ShopSettings& settings = shop.facts.settings;
        settings.planMarginPercent = static_cast<int>(between(0, 30));
        settings.restBeforeWash = Hours{between(0, 72)};
        settings.dryingTakes = Hours{between(4, 30)};
        settings.blankLeadTime = Days{between(1, 6)};
        settings.filmLeadTime = Days{between(1, 6)};
        for (auto& day : settings.week) {
            day.reset();
            if (between(1, 4) > 1)
                day = OpeningHours{Minutes{between(8 * 60, 12 * 60)}, Minutes{between(13 * 60, 19 * 60)}};
        }
        settings.week[3] = OpeningHours{};
        for (int closed = 0; closed < 4; ++closed)
            settings.closedDays.push_back(kTuesday + Days{between(0, 20)});
        return shop;
    }

    AskedGarment garment() {
        AskedGarment asked = aTee(ColourId{between(1, 3)}, Seconds{between(60, 9000)});
        if (between(1, 6) == 1)
            asked.films = {FilmId{9}};
        return asked;
    }

private:
    std::mt19937 m_random;
};

} // namespace

TEST(PromiseOverManyOrders, NoPromiseGivenIsBrokenByALaterOne) {
    RandomShop random{21};
    int promises = 0;
    for (int trial = 0; trial < 60; ++trial) {
        const FairShop shop = random.shop();
        const ShopSettings& settings = shop.facts.settings;
        const Now moment = atTheTable();
        std::vector<PressLoad> load;
        std::vector<Piece> pieces;
        for (int order = 0; order < 25; ++order) {
            const std::vector<AskedGarment> asked{random.garment()};
            const Result<Promise> promise = promiseFor(asked, shop.facts, load, moment);
            ASSERT_TRUE(promise.ok()) << promise.error().message;
            const LocalTime due = pressedAt(*promise);
            ASSERT_GE(promise->readyAt, due + settings.restBeforeWash);
            load.push_back({due, asked.front().pressTime});
            pieces.push_back({releaseOf(*promise, settings, moment.local()), due,
                              marginOn(asked.front().pressTime, settings.planMarginPercent)});
            ASSERT_TRUE(allFit(pieces, settings, moment.local())) << "trial " << trial << ", order " << order;
            ++promises;
        }
    }
    EXPECT_EQ(promises, 60 * 25);
}

TEST(PromiseOverManyOrders, LoadThatFitsStillFitsAfterAPromise) {
    RandomShop random{22};
    int tried = 0;
    for (int trial = 0; trial < 1500; ++trial) {
        const FairShop shop = random.shop();
        const ShopSettings& settings = shop.facts.settings;
        const Now moment = atTheTable();
        std::vector<PressLoad> load;
        std::vector<Piece> pieces;
        for (std::int64_t given = random.between(1, 12); given > 0; --given) {
            load.push_back({moment.local() + Minutes{random.between(60, 8 * 24 * 60)},
                            Seconds{random.between(60, 10'000)}});
            pieces.push_back(
                {moment.local(), load.back().due, marginOn(load.back().work, settings.planMarginPercent)});
        }
        if (!allFit(pieces, settings, moment.local()))
            continue;
        ++tried;
        const std::vector<AskedGarment> asked{random.garment()};
        const Result<Promise> promise = promiseFor(asked, shop.facts, load, moment);
        ASSERT_TRUE(promise.ok());
        pieces.push_back({releaseOf(*promise, settings, moment.local()), pressedAt(*promise),
                          marginOn(asked.front().pressTime, settings.planMarginPercent)});
        ASSERT_TRUE(allFit(pieces, settings, moment.local())) << "trial " << trial;
    }
    EXPECT_GT(tried, 300);
}

TEST(PromiseOverManyOrders, ReadyOnTheHalfHourOrAtOpeningInOpeningHours) {
    RandomShop random{23};
    for (int trial = 0; trial < 300; ++trial) {
        const FairShop shop = random.shop();
        const std::vector<AskedGarment> asked{random.garment()};
        const Result<Promise> promise = promiseFor(asked, shop.facts, {}, atTheTable());
        ASSERT_TRUE(promise.ok());
        const LocalDate date = dateOf(promise->readyAt);
        const std::optional<OpeningHours> open = shop.facts.settings.hoursOn(date);
        ASSERT_TRUE(open);
        const Seconds ofDay = promise->readyAt - LocalTime{date};
        EXPECT_GE(ofDay, open->opens);
        EXPECT_LT(ofDay, open->closes);
        EXPECT_TRUE(ofDay % Minutes{30} == Seconds{0} || ofDay == open->opens);
        EXPECT_TRUE(std::ranges::is_sorted(promise->path, {}, &PromiseStep::at));
        EXPECT_FALSE(promise->why.empty());
    }
}

TEST(PromiseOverManyOrders, MoreWorkIsNeverPromisedSooner) {
    RandomShop random{24};
    for (int trial = 0; trial < 100; ++trial) {
        const FairShop shop = random.shop();
        std::vector<PressLoad> load;
        for (int given = 0; given < 6; ++given)
            load.push_back({atTheTable().local() + Minutes{random.between(-2000, 6000)},
                            Seconds{random.between(0, 9000)}});
        std::vector<AskedGarment> asked;
        LocalTime before{};
        for (int garments = 0; garments < 8; ++garments) {
            asked.push_back(random.garment());
            const Result<Promise> promise = promiseFor(asked, shop.facts, load, atTheTable());
            ASSERT_TRUE(promise.ok());
            EXPECT_GE(promise->readyAt, before);
            before = promise->readyAt;
        }
    }
}

TEST(PromiseOverManyOrders, IsGivenInAMomentBehindThreeHundredGarments) {
    FairShop shop;
    for (int lots = 0; lots < 60; ++lots) {
        const BlankLotId lot = shop.addLot(lots % 2 == 0 ? kMoss : kFog, 10);
        for (int kept = 0; kept < 5; ++kept)
            shop.keep(lot);
    }
    for (int day = 0; day < 40; ++day)
        shop.facts.settings.closedDays.push_back(kTuesday + Days{day * 9});
    std::vector<PressLoad> load;
    for (int garment = 0; garment < 300; ++garment)
        load.push_back({at(garment % 30, 9 + garment % 8), Minutes{6}});
    const std::vector<AskedGarment> asked(12, aTee(kMoss));
    constexpr int kTimes = 50;
    LocalTime ready{};
    const auto begins = std::chrono::steady_clock::now();
    for (int time = 0; time < kTimes; ++time)
        ready = promiseFor(asked, shop.facts, load, atTheTable())->readyAt;
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begins;
    std::cout << "a promise behind 300 garments: " << took.count() / kTimes << " ms\n";
    EXPECT_GT(ready, at(1, 0));
}

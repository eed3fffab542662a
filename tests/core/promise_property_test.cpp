// SPDX-License-Identifier: GPL-3.0-or-later
// Promises given one after the other, from a fixed seed: after each, everything promised so far must still
// fit, by a reckoning that works through the days hour by hour and knows nothing of how promises are made.

#include "core/orders/promise.h"
#include "tests/core/promise_builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <iostream>
#include <limits>
#include <random>

using namespace holdfast;
using namespace holdfast::fair_days;

namespace {

// An order's work: cut once its film is there, pressed once it is cut and its blank is dry.
struct Piece {
    LocalTime film{};
    Seconds cutting{0};
    LocalTime blank{};
    Seconds pressing{0};
    LocalTime due{};
};

// Seconds that the workshop is open from one moment to another, day by day.
std::int64_t openSeconds(const ShopSettings& settings, LocalTime from, LocalTime to) {
    Seconds open{0};
    for (LocalDate date = dateOf(from); date <= dateOf(to); date += Days{1}) {
        const std::optional<OpeningHours> hours = settings.hoursOn(date);
        if (!hours)
            continue;
        const LocalTime begins = std::max(from, LocalTime{date} + hours->opens);
        const LocalTime ends = std::min(to, LocalTime{date} + hours->closes);
        open += std::max(Seconds{0}, ends - begins);
    }
    return open.count();
}

// On the clock of open seconds: one maker takes up what is due first of what is there, broken off whenever
// something more pressing comes; cutting is due its pressing earlier. This meets all due times if any way
// does.
bool allFit(const std::vector<Piece>& pieces, const ShopSettings& settings, LocalTime from) {
    struct Job {
        std::int64_t release = 0;
        std::int64_t due = 0;
        std::int64_t work = 0;
        std::size_t behind = 0; // itself, or the cutting that comes before it
    };
    std::vector<Job> jobs;
    for (const Piece& piece : pieces) {
        const auto clock = [&](LocalTime time) { return openSeconds(settings, from, time); };
        const std::size_t first = jobs.size();
        jobs.push_back(
            {clock(piece.film), clock(piece.due) - piece.pressing.count(), piece.cutting.count(), first});
        jobs.push_back({clock(piece.blank), clock(piece.due), piece.pressing.count(), first});
    }
    std::int64_t moment = 0;
    for (;;) {
        Job* next = nullptr;
        std::int64_t change = std::numeric_limits<std::int64_t>::max();
        for (Job& job : jobs) {
            if (job.work == 0 || (&jobs[job.behind] != &job && jobs[job.behind].work > 0))
                continue;
            if (job.release > moment)
                change = std::min(change, job.release);
            else if (!next || job.due < next->due)
                next = &job;
        }
        if (!next && change == std::numeric_limits<std::int64_t>::max())
            return true;
        if (!next) {
            moment = change;
            continue;
        }
        const std::int64_t done = std::min(next->work, change - moment);
        next->work -= done;
        moment += done;
        if (next->work == 0 && moment > next->due)
            return false;
    }
}

Seconds marginOn(Seconds work, int percent) {
    return Seconds{(work.count() * (100 + percent) + 99) / 100};
}

// A promised order's work with its material as its path tells of it.
Piece pieceOf(const Promise& promise, const AskedGarment& asked, const ShopSettings& settings,
              LocalTime now) {
    Piece piece;
    piece.film = now;
    piece.blank = now;
    piece.cutting = marginOn(cuttingTime(asked.decals, settings), settings.planMarginPercent);
    piece.pressing = marginOn(asked.pressTime, settings.planMarginPercent);
    for (const PromiseStep& step : promise.path) {
        if (step.stage == PromiseStage::BuyFilm)
            piece.film = step.at;
        if (step.stage == PromiseStage::Wash)
            piece.blank = std::max(piece.blank, step.at + settings.washTakes + settings.dryingTakes);
        if (step.stage == PromiseStage::BuyBlank || step.stage == PromiseStage::Dry)
            piece.blank = std::max(piece.blank, step.at);
        if (step.stage == PromiseStage::Press)
            piece.due = step.at;
    }
    return piece;
}

LocalTime pressingOf(const Promise& promise) {
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
        settings.cutTakes = Minutes{between(0, 30)};
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
            asked.decals = {{FilmId{9}, {}, {}}};
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
        std::vector<PromisedWork> load;
        std::vector<Piece> pieces;
        for (int order = 0; order < 25; ++order) {
            const std::vector<AskedGarment> asked{random.garment()};
            const Result<Promise> promise = promiseFor(asked, shop.facts, shop.with(load), moment);
            ASSERT_TRUE(promise.ok()) << promise.error().message.english();
            const LocalTime due = pressingOf(*promise);
            ASSERT_GE(promise->readyAt, due + settings.restBeforeWash);
            load.push_back({due, asked.front().pressTime});
            load.push_back({due, cuttingTime(asked.front().decals, settings)});
            pieces.push_back(pieceOf(*promise, asked.front(), settings, moment.local()));
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
        std::vector<PromisedWork> load;
        std::vector<Piece> pieces;
        for (std::int64_t given = random.between(1, 12); given > 0; --given) {
            load.push_back({moment.local() + Minutes{random.between(60, 8 * 24 * 60)},
                            Seconds{random.between(60, 10'000)}});
            pieces.push_back({moment.local(), Seconds{0}, moment.local(),
                              marginOn(load.back().work, settings.planMarginPercent), load.back().due});
        }
        if (!allFit(pieces, settings, moment.local()))
            continue;
        ++tried;
        const std::vector<AskedGarment> asked{random.garment()};
        const Result<Promise> promise = promiseFor(asked, shop.facts, shop.with(load), moment);
        ASSERT_TRUE(promise.ok());
        pieces.push_back(pieceOf(*promise, asked.front(), settings, moment.local()));
        ASSERT_TRUE(allFit(pieces, settings, moment.local())) << "trial " << trial;
    }
    EXPECT_GT(tried, 300);
}

TEST(PromiseOverManyOrders, ReadyOnTheHalfHourOrAtOpeningInOpeningHours) {
    RandomShop random{23};
    for (int trial = 0; trial < 300; ++trial) {
        const FairShop shop = random.shop();
        const std::vector<AskedGarment> asked{random.garment()};
        const Result<Promise> promise = promiseFor(asked, shop.facts, shop.promised, atTheTable());
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
        std::vector<PromisedWork> load;
        for (int given = 0; given < 6; ++given)
            load.push_back({atTheTable().local() + Minutes{random.between(-2000, 6000)},
                            Seconds{random.between(0, 9000)}});
        std::vector<AskedGarment> asked;
        LocalTime before{};
        for (int garments = 0; garments < 8; ++garments) {
            asked.push_back(random.garment());
            const Result<Promise> promise = promiseFor(asked, shop.facts, shop.with(load), atTheTable());
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
            shop.keepUnwashed(lot);
    }
    for (int day = 0; day < 40; ++day)
        shop.facts.settings.closedDays.push_back(kTuesday + Days{day * 9});
    std::vector<PromisedWork> load;
    for (int garment = 0; garment < 300; ++garment)
        load.push_back({at(garment % 30, 9 + garment % 8), Minutes{6}});
    const std::vector<AskedGarment> asked(12, aTee(kMoss));
    constexpr int kTimes = 50;
    LocalTime ready{};
    const auto begins = std::chrono::steady_clock::now();
    for (int time = 0; time < kTimes; ++time)
        ready = promiseFor(asked, shop.facts, shop.with(load), atTheTable())->readyAt;
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begins;
    std::cout << "a promise behind 300 garments: " << took.count() / kTimes << " ms\n";
    EXPECT_GT(ready, at(1, 0));
}

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A small shop in memory for the tests of actions: a tee that is washed first, a film, a roll, a place and a
// press, and a clock that stands still until a test moves it.

#include "db/actions/blank_actions.h"
#include "db/actions/customer_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/order_actions.h"
#include "db/actions/press_actions.h"
#include "db/actions/shop_actions.h"
#include "db/tables/facts.h"

#include <gtest/gtest.h>

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::db {

// Every row of every recorded table and of the cards that triggers keep, as text.
using Dump = std::map<std::string, std::vector<std::string>>;

class SmallShop : public ::testing::Test {
protected:
    SmallShop();

    // Wed 11 Nov 2026, 09:30; the workshop's clock is an hour ahead of UTC.
    Now now() const { return {m_instant, Hours{1}}; }
    LocalTime inDays(int days) const { return LocalTime{now().today() + Days{days}} + Hours{15}; }
    void wait(std::chrono::seconds span) { m_instant += span; }

    Shop& shop() { return *m_shop; }
    Connection& connection() { return m_shop->connection(); }
    std::int64_t number(std::string_view sql) { return connection().number(sql); }
    std::string text(std::string_view sql);

    BlankLotId receiveTees(std::int64_t units, const std::string& size = "M");
    BlankLotId receiveCleanTees(std::int64_t units, const std::string& size = "M");
    void washAll(BlankLotId lot);
    BlankStyle aStyle(const std::string& name) const;
    Film aFilm(const std::string& shade) const;
    RollReceived aRoll() const;

    GarmentDraft aTee(const std::string& size = "M") const;
    OrderDraft aDraft(int garments = 1) const;
    OrderTaken take(const OrderDraft& draft);
    OrderTaken takeTees(int garments = 1) { return take(aDraft(garments)); }

    std::vector<GarmentId> garmentsOf(OrderId order);
    GarmentId garmentOf(const OrderTaken& order, std::size_t at = 0) { return garmentsOf(order.id).at(at); }
    std::vector<DecalId> decalsOf(GarmentId garment);
    DecalId decalOf(const OrderTaken& order, std::size_t at = 0) {
        return decalsOf(garmentOf(order, at)).at(0);
    }
    Route routeFor(GarmentId garment);
    void cutAll(const OrderTaken& order);
    void pressAll(GarmentId garment);
    // A garment whose blank is clean and whose decal is cut.
    OrderTaken readyToPress(int garments = 1);

    std::int64_t unitsOf(BlankLotId lot);
    std::int64_t lengthOf(RollId roll);
    std::optional<BlankLotId> lotOf(GarmentId garment);

    Dump dump();
    std::string lastTitle();
    std::vector<std::string> titlesOf(Subject subject); // newest first

    // The work is refused with an error of this field, and not a row has changed.
    template <class Outcome>
    void expectRefused(const std::function<Outcome()>& work, const std::string& field,
                       const std::string& words = {}) {
        const Dump before = dump();
        const std::size_t entries = shop().recent(10'000).size();
        const Outcome outcome = work();
        ASSERT_FALSE(outcome.ok());
        EXPECT_EQ(outcome.error().field, field) << outcome.error().message.english();
        EXPECT_NE(outcome.error().message.english().find(words), std::string::npos)
            << outcome.error().message.english();
        EXPECT_EQ(dump(), before);
        EXPECT_EQ(shop().recent(10'000).size(), entries);
    }

    // The work succeeds, is one entry of this title, and is taken back and done again without a trace.
    template <class Outcome>
    void expectUndoable(const std::function<Outcome()>& work, const std::string& title) {
        const Dump before = dump();
        const Outcome outcome = work();
        ASSERT_TRUE(outcome.ok()) << outcome.error().message.english();
        expectTakenBackAndDoneAgain(before, title);
    }

    void expectSound();

    PlaceId m_place;
    PlaceId m_damp;
    PressId m_press;
    FilmId m_film;
    RollId m_roll;
    BlankStyleId m_tee;
    ColourId m_moss;
    ColourId m_ink;

private:
    void expectTakenBackAndDoneAgain(const Dump& before, const std::string& title);

    Instant m_instant;
    std::unique_ptr<Shop> m_shop;
};

} // namespace holdfast::db

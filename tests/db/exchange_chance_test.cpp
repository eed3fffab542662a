// Thousands of actions and takings back on two and three laptops, in an order that chance picks, with news
// carried whenever chance will, or lost: when all have all, all hold the same, nothing is below zero, and
// every entry that was made is either in the history or set aside by name.
#include "core/press/route.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace holdfast::db {
namespace {

class LaptopsByChance : public Laptops, public ::testing::WithParamInterface<unsigned> {
protected:
    std::size_t below(std::size_t count) {
        return std::uniform_int_distribution<std::size_t>{0, count - 1}(m_chance);
    }

    template <class AnyId>
    std::optional<AnyId> any(Shop& on, const std::string& table) {
        const std::int64_t count = on.connection().number("SELECT COUNT(*) FROM " + table);
        if (count == 0)
            return std::nullopt;
        Query row = on.connection().query("SELECT id FROM " + table + " ORDER BY id DESC LIMIT 1 OFFSET ?1",
                                          static_cast<std::int64_t>(below(static_cast<std::size_t>(count))));
        return row.step() ? std::optional{row.id<AnyId>(0)} : std::nullopt;
    }

    static Route routeOn(Shop& on, GarmentId garment) {
        const OrderId order{on.connection().number("SELECT order_id FROM garment WHERE id = ?1", garment)};
        const auto facts = loadFactsOf(on.connection(), std::span{&order, 1});
        return routeOf(facts, facts.garments.at(garment));
    }

    void did(bool isDone) { m_done += isDone; }

    void onStock(Shop& on) {
        switch (below(7)) {
        case 0:
            return did(receiveBlanks(on, m_tee, below(2) == 0 ? "M" : "L", m_moss,
                                     static_cast<std::int64_t>(below(4)) + 1, now())
                           .ok());
        case 1:
            if (const auto lot = any<BlankLotId>(on, "blank_lot"))
                did(correctCount(on, *lot, static_cast<std::int64_t>(below(5)), "counted anew").ok());
            return;
        case 2:
            if (const auto lot = any<BlankLotId>(on, "blank_lot")) {
                WashPlan plan;
                plan.detergent = "mild";
                plan.parts = {{*lot, static_cast<std::int64_t>(below(3)) + 1}};
                did(startWash(on, plan).ok());
            }
            return;
        case 3:
            if (const auto load = any<WashLoadId>(on, "wash_load"))
                did(markDry(on, *load).ok());
            return;
        case 4: {
            RollReceived roll = aRoll();
            roll.length = {static_cast<std::int64_t>(below(900)) + 100};
            return did(receiveRoll(on, roll, now()).ok());
        }
        case 5:
            if (const auto roll = any<RollId>(on, "film_roll"))
                did(correctLength(on, *roll, {static_cast<std::int64_t>(below(900))}, "measured").ok());
            return;
        default:
            if (const auto decal = any<DecalId>(on, "decal"))
                if (const auto roll = any<RollId>(on, "film_roll"))
                    did(below(4) == 0 ? markMiscut(on, *decal, "blade slipped").ok()
                                      : cutDecals(on, *roll, std::span{&*decal, 1}, {230}, now()).ok());
        }
    }

    void onOrder(Shop& on, OrderId order) {
        switch (below(7)) {
        case 0:
            return did(moveMoney(on, order, MoneyKind::Payment, {static_cast<std::int64_t>(below(2000)) + 1},
                                 PaidHow::Card)
                           .ok());
        case 1:
            return did(moveMoney(on, order, MoneyKind::Refund, {static_cast<std::int64_t>(below(900)) + 1},
                                 PaidHow::Cash)
                           .ok());
        case 2:
            return did(below(4) == 0
                           ? cancelOrder(on, order, "changed their mind").ok()
                           : movePromise(on, order, inDays(static_cast<int>(below(9)) + 1), now()).ok());
        case 3:
            return did(confirmQuotation(on, order).ok());
        case 4:
            return did(changeNote(on, order, "note " + std::to_string(below(5))).ok());
        case 5: {
            const CustomerId customer{
                on.connection().number("SELECT customer_id FROM shop_order WHERE id = ?1", order)};
            return did(changeCustomer(on, customer, "Odile " + std::to_string(below(3)), "").ok());
        }
        default:
            return did(handOver(on, order, now()).ok());
        }
    }

    void onGarment(Shop& on, GarmentId garment) {
        switch (below(8)) {
        case 0:
            return did(markSpoiled(on, garment, "scorched").ok());
        case 1:
            return did(changeBlank(on, garment, m_tee, below(2) == 0 ? "M" : "L", m_moss).ok());
        case 2:
            return did(backAStep(on, garment).ok());
        case 3:
        case 4:
            return did(takeUp(on, garment, routeOn(on, garment), now()).ok());
        default:
            return did(finishStep(on, garment, routeOn(on, garment)).ok());
        }
    }

    void takeAnyOn(Shop& on) {
        auto draft = aDraft(static_cast<int>(below(3)) + 1);
        draft.customerName = below(2) == 0 ? "Odile Farrant" : "Teo Lindqvist " + std::to_string(below(9));
        draft.isQuotation = below(5) == 0;
        draft.promised = inDays(static_cast<int>(below(9)) + 1);
        draft.deposit = {static_cast<std::int64_t>(below(2)) * (draft.isQuotation ? 0 : 500)};
        did(takeOrder(on, draft, now()).ok());
    }

    void takeBackAnyOn(Shop& on) {
        const auto entries = on.recent(15);
        if (const auto& entry = entries[below(entries.size())]; entry.id.value > m_first.value)
            m_takenBack += on.undo(entry.id).ok();
    }

    void actOn(Shop& on) {
        wait(Seconds{40});
        const auto kind = below(20);
        const auto order = any<OrderId>(on, "shop_order");
        if (kind < 3 || !order)
            takeAnyOn(on);
        else if (kind < 8)
            onStock(on);
        else if (kind < 12)
            onOrder(on, *order);
        else if (kind < 17)
            onGarment(on, *any<GarmentId>(on, "garment"));
        else
            takeBackAnyOn(on);
    }

    // What was made anywhere is known by its id; entries that news brought are those of the others.
    void noteEntriesOf(Shop& on) {
        for (const HistoryEntry& entry : on.recent(40))
            m_made.insert(entry.id.value);
    }

    void carry(Laptop& laptop) {
        if (below(5) == 0) { // written and lost
            newsFrom(*laptop.shop);
            newsFrom(shop(), laptop.number);
            return;
        }
        if (below(2) == 0)
            note(bring(laptop));
        else
            note(fetch(laptop));
    }

    void note(const NewsTakenIn& taken) {
        m_differences += taken.differences.size();
        for (const Difference& difference : taken.differences)
            EXPECT_FALSE(difference.words.empty()) << difference.title;
    }

    static void expectSoundOn(Shop& on) {
        EXPECT_EQ(textOf(on, "SELECT group_concat(message) FROM ledger_fault"), "");
        EXPECT_EQ(numberOf(on, "SELECT COUNT(*) FROM pragma_foreign_key_check"), 0);
        EXPECT_EQ(
            numberOf(
                on,
                "SELECT COUNT(*) FROM (SELECT number FROM film_roll GROUP BY number HAVING COUNT(*) > 1)"),
            0);
        EXPECT_EQ(
            numberOf(on, "SELECT COUNT(*) FROM (SELECT garment_id FROM press_step WHERE finished_at IS NULL "
                         "GROUP BY garment_id HAVING COUNT(*) > 1)"),
            0);
        EXPECT_EQ(
            numberOf(
                on, "SELECT COUNT(*) FROM (SELECT * FROM order_card EXCEPT SELECT * FROM order_card_source)"),
            0);
    }

    void run(const std::vector<Laptop*>& others, int actions) {
        m_first = shop().recent(1).front().id;
        for (int count = 0; count < actions && !HasFailure(); ++count) {
            const std::size_t which = below(others.size() + 1);
            Shop& on = which == 0 ? shop() : *others[which - 1]->shop;
            actOn(on);
            noteEntriesOf(on);
            if (below(12) == 0) {
                carry(*others[below(others.size())]);
                expectSoundOn(shop());
            }
        }
        for (int round = 0; round < 2; ++round)
            for (Laptop* laptop : others) {
                note(bring(*laptop));
                note(fetch(*laptop));
            }
        for (Laptop* laptop : others) {
            expectSame(shop(), *laptop->shop);
            expectWhole(*laptop->shop);
            expectSoundOn(*laptop->shop);
        }
        expectWhole(shop());
        expectNothingLost();
    }

    void expectNothingLost() {
        std::set<std::int64_t> kept;
        Query rows =
            connection().query("SELECT id FROM journal_entry UNION ALL SELECT id FROM journal_aside");
        while (rows.step())
            kept.insert(rows.integer(0));
        std::size_t lost = 0;
        for (const std::int64_t entry : m_made)
            lost += !kept.contains(entry);
        EXPECT_EQ(lost, 0U);
    }

    std::mt19937 m_chance{GetParam()};
    EntryId m_first;
    std::set<std::int64_t> m_made;
    std::size_t m_differences = 0;
    int m_done = 0;
    int m_takenBack = 0;
};

TEST_P(LaptopsByChance, TwoHoldTheSameInTheEnd) {
    run({&aLaptop("Fair laptop", -Hours{3})}, 500);
    EXPECT_GT(m_done, 150);
    EXPECT_GT(m_takenBack, 10);
    EXPECT_GT(m_differences, 3U) << "else chance has tested little";
}

TEST_P(LaptopsByChance, ThreeHoldTheSameInTheEnd) {
    Laptop& fair = aLaptop("Fair laptop", Minutes{90});
    Laptop& attic = aLaptop("Attic laptop", -Hours{50});
    run({&fair, &attic}, 400);
    EXPECT_GT(m_differences, 3U) << "else chance has tested little";
}

INSTANTIATE_TEST_SUITE_P(Chance, LaptopsByChance, ::testing::Range(1U, 7U));

} // namespace
} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What may be done in a shop, by chance, for tests that carry it between laptops.

#include "core/press/route.h"
#include "db/actions/forget_customer.h"
#include "tests/db/exchange_fixture.h"

#include <cstdlib>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace holdfast::db {

// How many rounds of each test by chance: HOLDFAST_ROUNDS for the long tests.
inline unsigned rounds(unsigned usually) {
    const char* wished = std::getenv("HOLDFAST_ROUNDS");
    return wished == nullptr ? usually : static_cast<unsigned>(std::strtoul(wished, nullptr, 10));
}

class ActsByChance : public Laptops, public ::testing::WithParamInterface<unsigned> {
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

    void changeTee(Shop& on) {
        BlankStyle style = loadFactsOf(on.connection(), {}).styles.at(m_tee);
        switch (below(5)) {
        case 0:
            style.sizes.insert(style.sizes.begin() +
                                   static_cast<std::ptrdiff_t>(below(style.sizes.size() + 1)),
                               "Size " + std::to_string(below(4)));
            break;
        case 1:
            style.sizes.back() = style.sizes.back() == "L" ? "Large" : "L";
            break;
        case 2:
            style.sizes.erase(style.sizes.begin() + static_cast<std::ptrdiff_t>(below(style.sizes.size())));
            break;
        case 3:
            style.colours.push_back({{}, "Hue " + std::to_string(style.colours.size()), 0x806040});
            break;
        default:
            style.cost = {static_cast<std::int64_t>(below(900))};
            style.isRetired = !style.isRetired;
            style.colours.back().isRetired = !style.colours.back().isRetired;
        }
        did(changeStyle(on, style).ok());
    }

    void onStock(Shop& on) {
        switch (below(8)) {
        case 7:
            return changeTee(on);
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

    void forgetAnyOn(Shop& on) {
        if (const auto customer = any<CustomerId>(on, "customer"))
            m_forgotten += forgetCustomer(on, *customer).ok();
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
        else if (kind == 19 && below(6) == 0)
            forgetAnyOn(on);
        else if (kind < 8)
            onStock(on);
        else if (kind < 12)
            onOrder(on, *order);
        else if (kind < 17)
            onGarment(on, *any<GarmentId>(on, "garment"));
        else
            takeBackAnyOn(on);
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
        for (const char* apart : {"garment_card EXCEPT SELECT * FROM garment_card_source",
                                  "garment_card_source EXCEPT SELECT * FROM garment_card"})
            EXPECT_EQ(numberOf(on, std::string{"SELECT COUNT(*) FROM (SELECT * FROM "} + apart + ")"), 0)
                << apart;
    }

    std::mt19937 m_chance{GetParam()};
    EntryId m_first; // what was there before is left alone
    int m_done = 0;
    int m_takenBack = 0;
    int m_forgotten = 0;
};

} // namespace holdfast::db

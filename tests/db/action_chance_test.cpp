// SPDX-License-Identifier: GPL-3.0-or-later
// Hundreds of actions and takings back in an order that chance picks: the ledgers, the cards of the order
// book and the press stay sound after each, and taking back all of it leaves the shop as it was.
#include "tests/db/small_shop.h"

#include <random>

namespace holdfast::db {
namespace {

class ActionsByChance : public SmallShop, public ::testing::WithParamInterface<unsigned> {
protected:
    std::size_t below(std::size_t count) {
        return std::uniform_int_distribution<std::size_t>{0, count - 1}(m_chance);
    }

    template <class AnyId>
    std::optional<AnyId> any(const std::string& table) {
        Query rows = connection().query("SELECT id FROM " + table + " ORDER BY id");
        std::vector<AnyId> ids;
        while (rows.step())
            ids.push_back(rows.id<AnyId>(0));
        return ids.empty() ? std::nullopt : std::optional{ids[below(ids.size())]};
    }

    void actOnStock() {
        switch (below(5)) {
        case 0:
            receiveTees(static_cast<std::int64_t>(below(4)) + 1, below(2) == 0 ? "M" : "L");
            return;
        case 1:
            if (const auto lot = any<BlankLotId>("blank_lot"))
                m_done +=
                    correctCount(shop(), *lot, static_cast<std::int64_t>(below(5)), "counted anew").ok();
            return;
        case 2:
            if (const auto lot = any<BlankLotId>("blank_lot")) {
                WashPlan plan;
                plan.detergent = "mild";
                plan.parts = {{*lot, static_cast<std::int64_t>(below(3)) + 1}};
                plan.softener = below(4) == 0;
                m_done += startWash(shop(), plan).ok();
            }
            return;
        case 3:
            if (const auto load = any<WashLoadId>("wash_load"))
                m_done += markDry(shop(), *load).ok();
            return;
        default:
            if (const auto decal = any<DecalId>("decal"))
                m_done += below(3) == 0 ? markMiscut(shop(), *decal, "blade slipped").ok()
                                        : cutDecals(shop(), m_roll, std::span{&*decal, 1}, {230}, now()).ok();
        }
    }

    void actOnOrder(OrderId order) {
        switch (below(6)) {
        case 0:
            m_done += moveMoney(shop(), order, MoneyKind::Payment,
                                {static_cast<std::int64_t>(below(2000)) + 1}, PaidHow::Card)
                          .ok();
            return;
        case 1:
            m_done += moveMoney(shop(), order, MoneyKind::Refund, {static_cast<std::int64_t>(below(900)) + 1},
                                PaidHow::Cash)
                          .ok();
            return;
        case 2:
            m_done += below(4) == 0
                          ? cancelOrder(shop(), order, "changed their mind").ok()
                          : movePromise(shop(), order, inDays(static_cast<int>(below(9)) + 1), now()).ok();
            return;
        case 3:
            m_done += confirmQuotation(shop(), order).ok();
            return;
        case 4:
            m_done += changeNote(shop(), order, "note " + std::to_string(below(100))).ok();
            return;
        default:
            m_done += handOver(shop(), order, now()).ok();
        }
    }

    void actOnGarment(GarmentId garment) {
        switch (below(8)) {
        case 0:
            m_done += markSpoiled(shop(), garment, "scorched").ok();
            return;
        case 1:
            m_done += changeBlank(shop(), garment, m_tee, below(2) == 0 ? "M" : "L", m_moss).ok();
            return;
        case 2:
            m_done += backAStep(shop(), garment).ok();
            return;
        case 3:
        case 4:
            m_done += takeUp(shop(), garment, routeFor(garment), now()).ok();
            return;
        default:
            m_done += finishStep(shop(), garment, routeFor(garment)).ok();
        }
    }

    void takeAny() {
        auto draft = aDraft(static_cast<int>(below(3)) + 1);
        draft.customerName = below(2) == 0 ? "Odile Farrant" : "Teo Lindqvist " + std::to_string(below(9));
        draft.isQuotation = below(5) == 0;
        draft.promised = inDays(static_cast<int>(below(9)) + 1);
        draft.deposit = {static_cast<std::int64_t>(below(2)) * (draft.isQuotation ? 0 : 500)};
        take(draft);
    }

    void takeBackAny() {
        const auto entries = shop().recent(12);
        if (const auto& entry = entries[below(entries.size())]; entry.id.value > m_first.value)
            m_takenBack += shop().undo(entry.id).ok();
    }

    // Newest first, takings back included: what they took back stands again and is taken back in its turn.
    void takeBackAll() {
        for (const HistoryEntry& entry : shop().recent(10'000)) {
            if (entry.id.value <= m_first.value)
                return;
            const auto back = shop().undo(entry.id);
            ASSERT_TRUE(back.ok()) << entry.title << ": " << back.error().message.english();
        }
    }

    void actByChance() {
        wait(Minutes{7});
        const auto kind = below(20);
        const auto order = any<OrderId>("shop_order");
        if (kind < 2 || !order)
            takeAny();
        else if (kind < 7)
            actOnStock();
        else if (kind < 11)
            actOnOrder(*order);
        else if (kind < 17)
            actOnGarment(*any<GarmentId>("garment"));
        else
            takeBackAny();
    }

    std::mt19937 m_chance{GetParam()};
    EntryId m_first;
    int m_done = 0;
    int m_takenBack = 0;
};

TEST_P(ActionsByChance, LeaveASoundShopAndCanAllBeTakenBack) {
    m_first = shop().recent(1).front().id;
    const Dump before = dump();
    for (int count = 0; count < 250 && !HasFailure(); ++count) {
        actByChance();
        expectSound();
    }
    EXPECT_GT(m_done, 50);
    EXPECT_GT(m_takenBack, 3);
    takeBackAll();
    expectSound();
    EXPECT_EQ(dump(), before);
}

INSTANTIATE_TEST_SUITE_P(Chance, ActionsByChance, ::testing::Values(1U, 2U, 3U, 5U));

} // namespace
} // namespace holdfast::db

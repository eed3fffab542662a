// SPDX-License-Identifier: GPL-3.0-or-later
// An order that was taken, changed as a whole: what its draft differs in from what is in the shop, as one
// entry.
#include "core/orders/order_change.h"
#include "core/trade/limits.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/order_actions.h"
#include "db/actions/order_parts.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <set>

namespace holdfast::db {
namespace {

constexpr const char* kAgreedWithChange = "with the change";
constexpr const char* kMadeAgainBecause = "changed for the customer";
constexpr std::size_t kMostChangesSaid = 40;

BlankKind kindOf(const GarmentDraft& draft) {
    return {draft.style, draft.size, draft.colour};
}

class OrderChanging {
public:
    OrderChanging(Writer& writer, OrderId order, const OrderDraft& before, const OrderDraft& after,
                  const ShopFacts& facts, const Now& now)
        : m_writer(writer)
        , m_connection(writer.connection())
        , m_order(order)
        , m_before(before)
        , m_after(after)
        , m_facts(facts)
        , m_now(now) {}

    Result<Done> change() {
        OrderDraft named = m_after;
        const auto customer = customerFor(m_writer, m_after);
        if (!customer.ok())
            return customer.error();
        named.customer = *customer;
        const std::vector<Sentence> changes = changesBetween(m_before, named, m_order, m_facts);
        if (changes.empty() && m_after.deposit == Money{})
            return Done{};
        m_connection.run("UPDATE shop_order SET customer_id = ?2, promised = ?3, note = ?4 WHERE id = ?1",
                         m_order, *customer, m_after.promised, trimmed(m_after.note));
        // What is offered now is offered from today.
        if (!isConfirmed())
            m_connection.run("UPDATE shop_order SET valid_until = ?2 WHERE id = ?1", m_order,
                             m_now.today() + m_facts.settings.prices.quotationFor);
        for (const GarmentDraft& was : m_before.garments)
            if (const GarmentDraft* now = takenGarment(m_after, *was.taken))
                changeGarment(was, *now);
            else
                cancelGarment(was);
        addGarments();
        changeLines();
        for (const BlankKind& kind : m_givenBack)
            giveToWaiting(m_writer, kind);
        takeMoney();
        m_writer.concerns(m_order);
        m_writer.concerns(*m_before.customer);
        m_writer.concerns(*customer);
        describe(changes);
        return Done{};
    }

private:
    bool isConfirmed() const { return !m_before.isQuotation; }
    const Garment& taken(const GarmentDraft& was) const { return m_facts.garments.at(*was.taken); }
    bool hasBegun(const GarmentDraft& was) const { return !m_facts.stepsOf(taken(was)).empty(); }

    // The blank goes back to the rail, for whoever waits for one.
    void release(const GarmentDraft& was) {
        const Garment& garment = taken(was);
        if (!garment.lot || hasBegun(was))
            return;
        giveBack(m_writer, garment.id);
        m_writer.concerns(*garment.lot);
        m_givenBack.insert(kindOf(was));
    }

    void cancelGarment(const GarmentDraft& was) {
        release(was);
        m_connection.run("UPDATE garment SET cancelled_at = ?2 WHERE id = ?1", *was.taken, m_now.instant);
        m_writer.concerns(*was.taken);
    }

    void changeGarment(const GarmentDraft& was, const GarmentDraft& now) {
        if (was == now)
            return;
        const GarmentId id = *was.taken;
        const bool isMadeAgain = now.isMadeAgain && hasBegun(was);
        if (isMadeAgain)
            spoil(was);
        if (kindOf(was) != kindOf(now) || isMadeAgain)
            changeBlankOf(was, now, isMadeAgain);
        m_connection.run("UPDATE garment SET price_minor = ?2 WHERE id = ?1", id, now.price);
        changeDecals(was, now);
        m_writer.concerns(id);
    }

    // What was pressed is lost, as if it were spoiled: it begins again with a new blank and new film.
    void spoil(const GarmentDraft& was) {
        const Garment& garment = taken(was);
        m_connection.run("INSERT INTO spoil (id, garment_id, attempt, at, cause) VALUES (?1, ?2, ?3, ?4, ?5)",
                         m_writer.newId<RowId>(), garment.id, garment.attempt, m_now.instant,
                         kMadeAgainBecause);
        m_connection.run("UPDATE decal SET cut_roll_id = NULL, cut_at = NULL WHERE garment_id = ?1",
                         garment.id);
        m_connection.run("UPDATE garment SET attempt = attempt + 1, lot_id = NULL WHERE id = ?1", garment.id);
    }

    void changeBlankOf(const GarmentDraft& was, const GarmentDraft& now, bool isMadeAgain) {
        if (!isMadeAgain)
            release(was);
        m_connection.run("UPDATE garment SET style_id = ?2, size = ?3, colour_id = ?4 WHERE id = ?1",
                         *was.taken, now.style, now.size, now.colour);
        if (isConfirmed())
            m_toKeep.emplace_back(*was.taken, kindOf(now));
    }

    void changeDecals(const GarmentDraft& was, const GarmentDraft& now) {
        for (const DecalDraft& decal : was.decals)
            if (std::ranges::find(now.decals, decal.taken, &DecalDraft::taken) == now.decals.end()) {
                concernsRollOf(was, *decal.taken);
                m_connection.run("DELETE FROM decal WHERE id = ?1", *decal.taken);
            }
        for (const DecalDraft& decal : now.decals) {
            const auto before = std::ranges::find(was.decals, decal.taken, &DecalDraft::taken);
            if (!decal.taken)
                addDecal(m_writer, *was.taken, decal, agreed());
            else if (before != was.decals.end() && *before != decal)
                changeDecal(was, *before, decal);
        }
    }

    void changeDecal(const GarmentDraft& was, const DecalDraft& before, const DecalDraft& now) {
        if (isCutOtherwise(before, now)) {
            concernsRollOf(was, *before.taken);
            m_connection.run("UPDATE decal SET cut_roll_id = NULL, cut_at = NULL WHERE id = ?1",
                             *before.taken);
        }
        rewriteDecal(m_writer, *before.taken, now);
        if (before.content != now.content)
            m_connection.run("UPDATE decal SET confirmed_by = ?2 WHERE id = ?1", *before.taken, agreed());
        m_writer.concerns(*before.taken);
    }

    // What was cut for it is lost to the roll; its history says when.
    void concernsRollOf(const GarmentDraft& was, DecalId decal) {
        const auto own = std::ranges::find(taken(was).decals, decal, &Decal::id);
        if (own != taken(was).decals.end() && own->cutFrom)
            m_writer.concerns(*own->cutFrom);
    }

    const char* agreed() const { return isConfirmed() ? kAgreedWithChange : ""; }

    // After the last one that the order ever had: no ticket names two garments by one letter. Blanks are kept
    // once all that is given back is on the rail.
    void addGarments() {
        auto position = static_cast<int>(m_connection.number(
            "SELECT COALESCE(MAX(position), 0) FROM garment WHERE order_id = ?1", m_order));
        for (const GarmentDraft& draft : m_after.garments)
            if (!draft.taken) {
                const GarmentId garment = addGarment(m_writer, m_order, draft, ++position, agreed());
                if (isConfirmed())
                    m_toKeep.emplace_back(garment, kindOf(draft));
            }
        for (const auto& [garment, kind] : m_toKeep)
            keepBlank(m_writer, garment, kind);
    }

    void changeLines() {
        for (const BillLine& was : m_before.lines)
            if (std::ranges::find(m_after.lines, was.taken, &BillLine::taken) == m_after.lines.end())
                m_connection.run("DELETE FROM bill_line WHERE id = ?1", *was.taken);
        for (const BillLine& line : m_after.lines)
            if (!line.taken)
                addBillLine(m_writer, m_order, line);
            else if (std::ranges::find(m_before.lines, line) == m_before.lines.end())
                rewriteBillLine(m_writer, line);
    }

    void takeMoney() {
        if (m_after.deposit == Money{})
            return;
        m_connection.run("INSERT INTO money_move (id, order_id, at, minor, kind, how) "
                         "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                         m_writer.newId<RowId>(), m_order, m_now.instant, m_after.deposit,
                         codeOf(MoneyKind::Payment), codeOf(m_after.depositHow));
    }

    void describe(std::vector<Sentence> changes) {
        const Numeral number{m_facts.orders.at(m_order).number};
        if (m_after.deposit != Money{})
            changes.push_back(
                said("{amount} paid, {how}", {{"amount", Amount{m_after.deposit, m_facts.settings.currency}},
                                              {"how", paidWords(m_after.depositHow)}}));
        if (changes.size() > kMostChangesSaid) {
            const auto more = static_cast<std::int64_t>(changes.size() - kMostChangesSaid);
            changes.resize(kMostChangesSaid);
            changes.push_back(said("{n} more", {{"n", Numeral{more}}}));
        }
        m_writer.describe(
            said("Order {order} changed: {changes}", {{"order", number}, {"changes", changes}}));
    }

    Writer& m_writer;
    Connection& m_connection;
    OrderId m_order;
    const OrderDraft& m_before;
    const OrderDraft& m_after;
    const ShopFacts& m_facts;
    const Now& m_now;
    std::set<BlankKind> m_givenBack;
    std::vector<std::pair<GarmentId, BlankKind>> m_toKeep;
};

} // namespace

Result<Done> changeOrder(Shop& shop, OrderId order, const OrderDraft& before, const OrderDraft& after,
                         const Now& now) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        const ShopFacts facts = loadFactsOf(writer.connection(), std::span(&order, 1));
        if (draftOf(facts, order) != before)
            return plainError(
                said("Order {order} was changed meanwhile. Open it again.", {{"order", row->label()}}));
        if (const auto checked = checkChange(before, after, order, facts, now); !checked.ok())
            return checked.error();
        return OrderChanging{writer, order, before, after, facts, now}.change();
    });
}

} // namespace holdfast::db

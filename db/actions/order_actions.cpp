// SPDX-License-Identifier: GPL-3.0-or-later
// Taking an order, and confirming one that was a quotation.
#include "db/actions/order_actions.h"

#include "core/trade/limits.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/order_parts.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"

namespace holdfast::db {
namespace {

constexpr const char* kAgreedAtTable = "at the table";

class OrderTaking {
public:
    OrderTaking(Writer& writer, const OrderDraft& draft, const Now& now, const ShopSettings& settings,
                const char* agreed)
        : m_writer(writer)
        , m_connection(writer.connection())
        , m_draft(draft)
        , m_now(now)
        , m_settings(settings)
        , m_agreed(agreed) {}

    Result<OrderTaken> take() {
        const auto customer = customerFor(m_writer, m_draft);
        if (!customer.ok())
            return customer.error();
        m_taken.id = m_writer.newId<OrderId>();
        m_taken.number = m_writer.nextOrderNumber();
        writeOrder(*customer);
        for (std::size_t at = 0; at < m_draft.garments.size(); ++at)
            writeGarment(m_draft.garments[at], static_cast<int>(at) + 1);
        writeDeposit();
        m_writer.concerns(m_taken.id);
        m_writer.concerns(*customer);
        m_writer.describe(title());
        return m_taken;
    }

private:
    void writeOrder(CustomerId customer) {
        const auto state = m_draft.isQuotation ? OrderState::Quoted : OrderState::Confirmed;
        m_connection.run(
            "INSERT INTO shop_order (id, number, customer_id, state, taken_at, taken_at_place, promised, "
            "note, tax_kind, tax_rate, taxed_by, tax_rounding, valid_until) "
            "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13)",
            m_taken.id, m_taken.number, customer, codeOf(state), m_now.instant,
            m_settings.fairName.empty() ? std::string{"workshop"} : m_settings.fairName, m_draft.promised,
            trimmed(m_draft.note), codeOf(m_draft.tax.kind), m_draft.tax.rate.hundredths,
            codeOf(m_draft.tax.by), codeOf(m_draft.tax.rounding),
            m_draft.isQuotation ? std::optional{m_now.today() + m_settings.prices.quotationFor}
                                : std::nullopt);
        for (const BillLine& line : m_draft.lines)
            addBillLine(m_writer, m_taken.id, line);
    }

    void writeGarment(const GarmentDraft& draft, int position) {
        const GarmentId garment =
            addGarment(m_writer, m_taken.id, draft, position, m_draft.isConfirmed ? m_agreed : "");
        if (!m_draft.isQuotation)
            keepBlank(m_writer, garment, {draft.style, draft.size, draft.colour});
    }

    void writeDeposit() {
        if (m_draft.deposit == Money{})
            return;
        m_connection.run(
            "INSERT INTO money_move (id, order_id, at, minor, kind, how) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            m_writer.newId<RowId>(), m_taken.id, m_now.instant, m_draft.deposit, codeOf(MoneyKind::Deposit),
            codeOf(m_draft.depositHow));
    }

    Sentence title() const {
        std::vector<NamedValue> values{{"order", Numeral{m_taken.number}}};
        if (!m_settings.fairName.empty())
            values.push_back({"place", m_settings.fairName});
        const Sentence taken = m_settings.fairName.empty()
                                   ? (m_draft.isQuotation ? said("Quoted order {order}", values)
                                                          : said("Took order {order}", values))
                                   : (m_draft.isQuotation ? said("Quoted order {order} at {place}", values)
                                                          : said("Took order {order} at {place}", values));
        if (m_draft.deposit == Money{})
            return taken;
        return said("{taken}, deposit {amount} {how}",
                    {{"taken", taken},
                     {"amount", Amount{m_draft.deposit, m_settings.currency}},
                     {"how", paidWords(m_draft.depositHow)}});
    }

    Writer& m_writer;
    Connection& m_connection;
    const OrderDraft& m_draft;
    const Now& m_now;
    const ShopSettings& m_settings;
    const char* m_agreed;
    OrderTaken m_taken;
};

} // namespace

Result<OrderTaken> takeOrder(Shop& shop, const OrderDraft& draft, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<OrderTaken> {
        const ShopFacts facts = loadFactsOf(writer.connection(), {});
        if (const auto checked = checkDraft(draft, facts, now); !checked.ok())
            return checked.error();
        return writeOrder(writer, draft, facts.settings, now, kAgreedAtTable);
    });
}

Result<OrderTaken> writeOrder(Writer& writer, const OrderDraft& draft, const ShopSettings& settings,
                              const Now& now, const char* agreed) {
    return OrderTaking{writer, draft, now, settings, agreed}.take();
}

Result<Done> confirmQuotation(Shop& shop, OrderId order) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        if (row->state == OrderState::Confirmed)
            return plainError(said("Order {order} is confirmed already.", {{"order", row->label()}}));
        writer.connection().run("UPDATE shop_order SET state = ?2 WHERE id = ?1", order,
                                codeOf(OrderState::Confirmed));
        for (const GarmentId id : garmentsOf(writer.connection(), order)) {
            const auto garment = garmentRow(writer.connection(), id);
            if (!garment.ok())
                return garment.error();
            if (!garment->lot)
                keepBlank(writer, id, {garment->style, garment->size, garment->colour});
            concernsGarment(writer, *garment);
        }
        writer.describe(said("Order {order} confirmed", {{"order", row->label()}}));
        writer.concerns(order);
        writer.concerns(row->customer);
        return Done{};
    });
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
// From the table into the shop, and from the shop onto the table again.
#include "app/places/fair_table/fair_table_model.h"

#include "app/desk/formats.h"
#include "app/theme/wording_outline.h"
#include "db/actions/customer_actions.h"
#include "db/tables/facts.h"

#include <algorithm>

namespace holdfast::app {

namespace {

bool isAsBefore(const DecalDraft& decal, const GarmentDraft& garment, const OrderDraft* before) {
    const GarmentDraft* was = before && garment.taken ? takenGarment(*before, *garment.taken) : nullptr;
    return was && decal.taken && std::ranges::any_of(was->decals, [&](const DecalDraft& other) {
               return other.taken == decal.taken && other.content == decal.content;
           });
}

// What was seen on the table is what will be cut, on any machine. A wording that nobody changed stays as it
// was taken, with an outline or without.
OrderDraft withOutlines(OrderDraft order, const OrderDraft* before) {
    for (GarmentDraft& garment : order.garments)
        for (DecalDraft& decal : garment.decals)
            if (auto* wording = std::get_if<Wording>(&decal.content);
                wording && wording->outline.empty() && !isAsBefore(decal, garment, before))
                wording->outline = outlineToKeep(*wording);
    return order;
}

} // namespace

Result<db::OrderTaken> FairTableModel::take(bool isQuotation) {
    if (const auto lack = missing(isQuotation))
        return plainError(inWindow(lack->what));
    if (m_draft.customer && !isKnown(*m_draft.customer))
        m_draft.customer.reset(); // undone meanwhile; the name and number typed make a new one
    const OrderDraft order = withOutlines(orderOf(m_draft, m_sums, isQuotation),
                                          m_draft.opened ? &m_draft.opened->before : nullptr);
    TakenOrder now = toldOf(order); // before the shop has it
    const auto taken = m_desk.file().asOne([&]() -> Result<db::OrderTaken> {
        if (const auto noted = notePhone(); !noted.ok())
            return noted.error();
        return write(order);
    });
    if (!taken.ok())
        return taken;
    now.id = taken->id;
    now.number = taken->number;
    m_taken = now;
    layNextOrder();
    return taken;
}

Result<db::OrderTaken> FairTableModel::write(const OrderDraft& order) {
    if (!m_draft.opened)
        return db::takeOrder(m_desk.file(), order, m_desk.now());
    const OpenedOrder& opened = *m_draft.opened;
    const auto changed = db::changeOrder(m_desk.file(), opened.order.id, opened.before, order, m_desk.now());
    if (!changed.ok())
        return changed.error();
    return db::OrderTaken{opened.order.id, opened.order.number};
}

// After one was taken, or changed: what waited for that comes back.
void FairTableModel::layNextOrder() {
    m_draft.knownPhone = m_draft.customerPhone;
    m_takenDraft = m_draft;
    m_past.clear();
    m_undone.clear();
    endStep();
    m_keptWords.clear();
    m_isRestored = false;
    m_draft = afterOpened(m_draft);
    if (!m_draft.isUntouched()) {
        m_keptWords = tr("Order %1 is changed. Here is what you were typing.").arg(m_taken->number);
        m_taken.reset();
    }
    keepNow();
    reckon();
    emit changed();
}

TakenOrder FairTableModel::toldOf(const OrderDraft& order) const {
    TakenOrder told;
    told.customer = words(order.customerName);
    told.readyAt = order.promised;
    told.total = order.total();
    told.paid = order.deposit + (m_draft.opened ? m_draft.opened->order.paid : Money{});
    told.paidHow = m_draft.paidHow;
    told.isQuotation = order.isQuotation;
    told.isChange = m_draft.opened != nullptr;
    told.leavesDayOpen = firstSaid(m_messages, &TableMessage::leavesDayOpen);
    told.dayWaitsFor = firstSaid(m_messages, &TableMessage::dayWaitsFor);
    return told;
}

// A known customer who gives another number.
Result<Done> FairTableModel::notePhone() {
    if (!m_draft.customer || m_draft.customerPhone == m_draft.knownPhone)
        return Done{};
    return db::changeCustomer(m_desk.file(), *m_draft.customer, m_draft.customerName, m_draft.customerPhone);
}

bool FairTableModel::isKnown(CustomerId customer) {
    const auto known = m_desk.file().read([&](db::Connection& connection) {
        return connection.number("SELECT COUNT(*) FROM customer WHERE id = ?1", customer) > 0;
    });
    return known.ok() && *known;
}

void FairTableModel::open(OrderId order) {
    if (m_draft.opened && m_draft.opened->order.id == order)
        return;
    const Order* open = m_shop->facts.orders.find(order);
    if (!open || !open->isOpen()) {
        m_desk.say(tr("This order is closed; it can be ordered again."));
        return;
    }
    endStep();
    edit(Step::Choice, [&](TableDraft& draft) { draft = openedDraft(m_shop->facts, order, draft); });
    endStep();
    m_desk.say(
        m_draft.opened && m_draft.opened->aside
            ? tr("Order %1 is on the table. What you were typing comes back after it.").arg(open->number)
            : tr("Order %1 is on the table, to be changed.").arg(open->number));
}

void FairTableModel::takeAgain(OrderId order) {
    const auto facts = m_desk.file().read(
        [&](db::Connection& connection) { return db::loadFactsOf(connection, std::span(&order, 1)); });
    const Order* found = facts.ok() ? facts->orders.find(order) : nullptr;
    if (!found || facts->garmentsOf(order).empty()) {
        m_desk.say(tr("There is nothing of this order that can be ordered again."));
        return;
    }
    endStep();
    edit(Step::Choice, [&](TableDraft& draft) { draft = sameAgain(*facts, order, draft); });
    endStep();
    m_desk.say(tr("The same as order %1, to be ordered again. Ctrl+Z brings back what was on the table.")
                   .arg(found->number));
}

bool FairTableModel::isChanged() const {
    if (!m_draft.opened)
        return false;
    const OrderDraft order = orderOf(m_draft, m_sums, false);
    return order.deposit != Money{} || m_draft.customerPhone != m_draft.knownPhone ||
           order != m_draft.opened->before;
}

// What was done to the order meanwhile, here or on another laptop.
void FairTableModel::followOpened() {
    if (!m_draft.opened)
        return;
    const OrderId id = m_draft.opened->order.id;
    const Order* order = m_shop->facts.orders.find(id);
    if (!order || !order->isOpen() ||
        (draftOf(m_shop->facts, id) == m_draft.opened->before && order->paid == m_draft.opened->order.paid))
        return;
    m_draft = broughtUpToDate(m_draft, m_shop->facts);
    m_past.clear(); // of the order as it was
    m_undone.clear();
    m_keepSoon.start();
}

} // namespace holdfast::app

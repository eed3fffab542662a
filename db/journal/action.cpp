// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/action.h"

#include "core/trade/assertion.h"
#include "db/journal/carried_entry.h"
#include "db/journal/shop.h"
#include "db/sqlite/changeset_form.h"

#include <utility>

namespace holdfast::db {

namespace {

// So few, some 4 MB, are left for what is written next.
constexpr std::int64_t kFewFreePages = 1'024;

// What took many rows away makes the file smaller again, in the same transaction.
void giveBackFreePages(Connection& connection) {
    if (connection.number("PRAGMA freelist_count") > kFewFreePages)
        connection.script("PRAGMA incremental_vacuum");
}

} // namespace

Action::Permit::Permit(Shop& shop, Action& action)
    : m_shop(shop) {
    HOLDFAST_ASSERT(shop.m_underWay == nullptr && "nothing is undone inside an action");
    HOLDFAST_ASSERT(!shop.connection().inTransaction() && "an action is not begun inside a read");
    m_shop.m_underWay = &action;
    m_shop.connection().allowWriting(true);
}

Action::Permit::~Permit() {
    m_shop.connection().allowWriting(false);
    m_shop.m_underWay = nullptr;
}

Action::Action(Shop& shop)
    : m_shop(shop)
    , m_permit(shop, *this)
    , m_transaction(shop.connection())
    , m_session(shop.connection(), shop.m_recordedTables)
    , m_writer(shop, shop.connection(), m_session, shop.now()) {}

std::optional<EntryId> Action::keep(std::optional<EntryId> undoes) {
    Changeset changeset = m_session.changeset();
    for (const TableChanges& changes : tablesOf(changeset))
        m_touched.insert(changes.table);
    if (!m_writer.m_inserted.empty()) {
        changeset.insert(changeset.end(), m_writer.m_inserted.begin(), m_writer.m_inserted.end());
        m_touched.insert(m_writer.m_insertedInto);
    }
    m_touched.merge(m_writer.m_touched);
    std::optional<EntryId> entry;
    if (!changeset.empty()) {
        entry = m_writer.newId<EntryId>();
        writeEntry(*entry, std::move(changeset), undoes);
    }
    giveBackFreePages(m_shop.connection());
    // Even without an entry: an order number that was given out stays given out.
    m_transaction.commit();
    if (entry)
        m_shop.noteLastId();
    return entry;
}

void Action::writeEntry(EntryId id, Changeset changeset, std::optional<EntryId> undoes) {
    HOLDFAST_ASSERT(!m_writer.m_title.empty() && "an action says what was done");
    CarriedEntry entry;
    entry.id = id;
    entry.seat = m_shop.m_seat;
    entry.at = m_writer.now();
    entry.title = KeptWords::of(m_writer.m_title);
    entry.undoes = undoes;
    entry.changeset = std::move(changeset);
    entry.subjects.assign(m_writer.m_subjects.begin(), m_writer.m_subjects.end());
    entry.salt = randomSalt();
    entry.identity = identityOf(entry);
    db::writeEntry(m_shop.connection(), entry);
    // The entry's id is made last, so it lies above all others of the action.
    m_shop.connection().run("UPDATE seat_here SET last_id = ?1", id);
}

} // namespace holdfast::db

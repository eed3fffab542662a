#include "db/journal/action.h"

#include "db/journal/shop.h"
#include "db/journal/standing.h"
#include "db/sqlite/changeset_form.h"

#include <cassert>

namespace holdfast::db {

Action::Permit::Permit(Shop& shop, Action& action)
    : m_shop(shop) {
    assert(shop.m_underWay == nullptr && "nothing is undone inside an action");
    assert(!shop.connection().inTransaction() && "an action is not begun inside a read");
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
    std::optional<EntryId> entry;
    if (!changeset.empty()) {
        entry = m_writer.newId<EntryId>();
        writeEntry(*entry, changeset, undoes);
    }
    // Even without an entry: an order number that was given out stays given out.
    m_transaction.commit();
    return entry;
}

void Action::writeEntry(EntryId entry, ChangesetView changeset, std::optional<EntryId> undoes) {
    assert(!m_writer.m_title.empty() && "an action says what was done");
    Connection& connection = m_shop.connection();
    connection.run("INSERT INTO journal_entry (id, seat_id, at, title, undoes, changeset) "
                   "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                   entry, m_shop.m_seat, m_writer.now(), m_writer.m_title, undoes, changeset);
    for (const auto& [kind, subject] : m_writer.m_subjects)
        connection.run("INSERT INTO journal_subject (kind, subject_id, entry_id) VALUES (?1, ?2, ?3)", kind,
                       subject, entry);
    // The entry's id is made last, so it lies above all others of the action.
    connection.run("UPDATE seat_here SET last_id = ?1", entry);
    if (undoes)
        markUndone(connection, *undoes, entry);
}

} // namespace holdfast::db

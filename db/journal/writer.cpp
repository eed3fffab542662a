// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/writer.h"

#include "core/trade/assertion.h"
#include "db/journal/shop.h"

namespace holdfast::db {

Writer::Writer(Shop& shop, Connection& connection, Session& session, Instant now)
    : m_shop(shop)
    , m_connection(connection)
    , m_session(session)
    , m_now(now) {}

std::int64_t Writer::makeId() {
    return m_shop.m_idMaker->next(m_now);
}

std::int64_t Writer::nextOrderNumber() {
    Query range = m_connection.query("SELECT next_order_number, last_order_number "
                                     "FROM seat_here JOIN seat ON seat.id = seat_here.seat_id");
    const bool found = range.step();
    HOLDFAST_ASSERT(found);
    const std::int64_t number = range.integer(0);
    if (!found || number > range.integer(1))
        throw SqliteFailure::inWords(said("This laptop has used up its order numbers: the last was {number}.",
                                          {{"number", Numeral{range.integer(1)}}}));
    m_connection.run("UPDATE seat_here SET next_order_number = ?1", number + 1);
    return number;
}

void Writer::concerns(Subject subject) {
    HOLDFAST_ASSERT(subject.id != 0);
    m_subjects.emplace(subject.kind, subject.id);
}

void Writer::concernsTheSameAs(EntryId entry) {
    Query subjects =
        m_connection.query("SELECT kind, subject_id FROM journal_subject WHERE entry_id = ?1", entry);
    while (subjects.step())
        m_subjects.emplace(subjects.text(0), subjects.integer(1));
}

} // namespace holdfast::db

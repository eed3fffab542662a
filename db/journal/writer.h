// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What an action writes with. It lives only inside Shop::act.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "db/journal/subject.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/inserted_rows.h"
#include "db/sqlite/session.h"

#include <cstdint>
#include <set>
#include <string>
#include <utility>

namespace holdfast::db {

class Shop;

class Writer {
public:
    Writer(const Writer&) = delete;
    Writer& operator=(const Writer&) = delete;

    Connection& connection() { return m_connection; }

    // The moment of the action: the same each time it is asked.
    Instant now() const { return m_now; }

    // writer.newId<OrderId>()
    template <class AnyId>
    AnyId newId() {
        return AnyId{makeId()};
    }

    // The next number of this seat's own range. A number is never given twice, even if its order is taken
    // back, because a claim ticket may bear it. Throws a failure in words when the range is used up.
    std::int64_t nextOrderNumber();

    // Does `work`, which only adds rows of one table, without the session's bookkeeping: what it returns as
    // rows is journaled instead. For one table an action, which is not written to otherwise.
    template <class Work>
    void insertMany(Work&& work) {
        m_session.pause(true);
        InsertedRows rows = std::forward<Work>(work)();
        m_session.pause(false);
        m_insertedInto = rows.table();
        m_inserted = rows.take();
    }

    // Does `work`, which leaves rows and journal in step by itself: what it writes to those tables is not in
    // the entry, and cannot be undone with it.
    template <class Work>
    void unrecorded(const std::set<std::string>& tables, Work&& work) {
        m_session.pause(true);
        std::forward<Work>(work)();
        m_session.pause(false);
        m_touched.insert(tables.begin(), tables.end());
    }

    // Must be called: what a person reads in the history, "Took order 426". The last call counts.
    void describe(Sentence title) { m_title = std::move(title); }
    const Sentence& title() const { return m_title; }

    // The entry shows in this subject's history. Saying it twice is the same as once.
    void concerns(Subject subject);
    void concernsTheSameAs(EntryId entry);

private:
    friend class Action;

    Writer(Shop& shop, Connection& connection, Session& session, Instant now);
    std::int64_t makeId();

    Shop& m_shop;
    Connection& m_connection;
    Session& m_session;
    Instant m_now;
    Changeset m_inserted; // in addition to what the session recorded
    std::string m_insertedInto;
    std::set<std::string> m_touched; // in addition to what is in the entry
    Sentence m_title;
    std::set<std::pair<std::string, std::int64_t>> m_subjects;
};

} // namespace holdfast::db

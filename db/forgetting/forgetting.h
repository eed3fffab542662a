// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Takes what people said of themselves, and what was written down about them, out of a shop: out of the rows,
// and out of the history as if it had never been said. The entries stay, with their identities, their places
// in the line and the money; what they hold of a name becomes "(forgotten)", before and after alike, so that
// rows and history agree as they did. It cannot be undone.
//
// What is being typed at the fair table stays: it is about an order to come.
//
// An entry that is brought here by a laptop that did not know yet is treated in the same way by forgetIn.

#include "db/forgetting/forgotten_people.h"
#include "db/journal/carried_entry.h"

#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace holdfast::db {

class Connection;
struct ValueChange;

class Forgetting {
public:
    // REQUIRES: a transaction in which writing is allowed, for as long as it lives. Reads the journal once,
    // for the rows that belonged to those people and are gone.
    Forgetting(Connection& connection, ForgottenPeople people);

    // The rows, the journal, what was set aside and this laptop's notes. False from `goOn`, which is asked
    // with the share done, ends it with a failure in words.
    void forgetHere(const std::function<bool(double share)>& goOn = {});

    // True where the entry held something of theirs; then it is as it would be here.
    bool forgetIn(CarriedEntry& entry);

private:
    void learnRows();
    void learnFrom(ChangesetView changeset);
    void forgetInRows();
    void forgetInJournal(const std::function<bool(double share)>& goOn);
    void rewrite(CarriedEntry& entry);
    void forgetInNotes();
    bool isTheirs(std::string_view table, const ValueChange& change) const;
    bool isAbout(const CarriedEntry& entry) const;
    bool isTheirSubject(const std::string& kind, std::int64_t id) const;

    Connection& m_connection;
    ForgottenPeople m_people;
    std::map<std::string, std::set<std::int64_t>, std::less<>> m_rows;    // ids, by table
    std::map<std::pair<std::string, std::size_t>, std::size_t> m_columns; // personal ones, by table and place
    std::set<std::string> m_texts;                                        // that were forgotten in rows
};

} // namespace holdfast::db

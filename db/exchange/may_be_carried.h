// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What news may write. A news file comes from a stick, and whoever can write to the stick can write anything
// into it: so each of its entries is held to what an action can do before anything of it is done.

#include "db/journal/carried_entry.h"
#include "db/journal/recorded_form.h"

#include <string>

namespace holdfast::db {

class Connection;

class MayBeCarried {
public:
    explicit MayBeCarried(Connection& connection);

    // Recorded tables only; ledgers are only ever added to, but that an undo takes away what the entry that
    // it undoes had added. Throws, in words, what no action of Holdfast has made.
    void requireOf(const CarriedEntry& entry);

private:
    bool takesAwayItsOwn(const CarriedEntry& entry);
    bool isHere(const std::string& ledger, const std::string& key);

    Connection& m_connection;
    RecordedForm m_form;
};

} // namespace holdfast::db

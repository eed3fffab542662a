// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rows that entries of a news file wrote. What they hold is read as the window reads it before the news
// is taken in: a value that no action writes keeps all of it out.

#include "db/sqlite/changeset.h"

#include <set>
#include <string>
#include <utility>

namespace holdfast::db {

class Connection;

class WrittenRows {
public:
    void add(ChangesetView changeset);

    // Throws a failure in words that names the first of them that cannot be read. Reads all facts of the
    // shop: a second for 20,000 orders.
    void requireReadable(Connection& connection) const;

private:
    std::set<std::pair<std::string, std::string>> m_rows; // table and key
};

} // namespace holdfast::db

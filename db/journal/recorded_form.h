// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a changeset may write to: the tables that actions are recorded in, as this shop has them. SQLite
// itself passes over what does not fit without a word, and writes to any other table that it finds.

#include "db/sqlite/changeset_form.h"

#include <map>
#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

class RecordedForm {
public:
    explicit RecordedForm(Connection& connection);

    // Of recorded tables only, each with the key that it has here and no more columns: a table that has
    // gained some since still fits.
    bool fits(const std::vector<TableChanges>& changes) const;

private:
    std::map<std::string, std::vector<bool>> m_isKey; // by table, by column
};

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/forgetting/personal_columns.h"

namespace holdfast::db {

std::set<std::string> tablesOfPeople() {
    std::set<std::string> tables;
    for (const PersonalColumn& personal : kPersonalColumns)
        tables.emplace(personal.table);
    return tables;
}

} // namespace holdfast::db

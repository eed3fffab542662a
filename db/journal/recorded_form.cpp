// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/recorded_form.h"

#include "db/journal/recorded_tables.h"
#include "db/sqlite/connection.h"

#include <algorithm>

namespace holdfast::db {

RecordedForm::RecordedForm(Connection& connection) {
    for (const std::string& table : recordedTables(connection)) {
        Query columns = connection.query("SELECT pk > 0 FROM pragma_table_info(?1) ORDER BY cid", table);
        while (columns.step())
            m_isKey[table].push_back(columns.truth(0));
    }
}

bool RecordedForm::fits(const std::vector<TableChanges>& changes) const {
    return std::ranges::all_of(changes, [this](const TableChanges& each) {
        const auto here = m_isKey.find(each.table);
        if (here == m_isKey.end() || each.isKey.size() > here->second.size())
            return false;
        const auto gained = here->second.begin() + static_cast<std::ptrdiff_t>(each.isKey.size());
        return std::equal(here->second.begin(), gained, each.isKey.begin()) &&
               std::find(gained, here->second.end(), true) == here->second.end();
    });
}

} // namespace holdfast::db

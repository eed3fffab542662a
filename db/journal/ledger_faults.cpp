#include "db/journal/ledger_faults.h"

#include "db/sqlite/connection.h"

namespace holdfast::db {

std::vector<std::string> ledgerFaults(Connection& connection) {
    std::vector<std::string> faults;
    if (connection.number(
            "SELECT COUNT(*) FROM sqlite_master WHERE type = 'view' AND name = 'ledger_fault'") == 0)
        return faults;
    Query rows = connection.query("SELECT message FROM ledger_fault");
    while (rows.step())
        faults.push_back(rows.text(0));
    return faults;
}

} // namespace holdfast::db

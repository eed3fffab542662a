// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/ledger_faults.h"

#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <set>

namespace holdfast::db {

namespace {

using Ids = std::set<std::int64_t>;

// More than these are looked at all at once.
constexpr std::size_t kFewLedgers = 500;

bool hasView(Connection& connection, std::string_view name) {
    return connection.number("SELECT COUNT(*) FROM sqlite_master WHERE type = 'view' AND name = ?1", name) >
           0;
}

// Where a table says whose ledger a row of it is in.
struct Belonging {
    std::string_view table;
    int column;
    enum class To { Lot, Roll, Order, Garment } to;
    const char* sqlOfRow; // the same, of a row that is there
};
constexpr std::array kBelongings{
    Belonging{"blank_lot", 0, Belonging::To::Lot, "SELECT id FROM blank_lot WHERE id = ?1"},
    Belonging{"lot_move", 1, Belonging::To::Lot, "SELECT lot_id FROM lot_move WHERE id = ?1"},
    Belonging{"garment", 6, Belonging::To::Lot, "SELECT lot_id FROM garment WHERE id = ?1"},
    Belonging{"press_step", 1, Belonging::To::Garment, "SELECT garment_id FROM press_step WHERE id = ?1"},
    Belonging{"film_roll", 0, Belonging::To::Roll, "SELECT id FROM film_roll WHERE id = ?1"},
    Belonging{"roll_move", 1, Belonging::To::Roll, "SELECT roll_id FROM roll_move WHERE id = ?1"},
    Belonging{"shop_order", 0, Belonging::To::Order, "SELECT id FROM shop_order WHERE id = ?1"},
    Belonging{"money_move", 1, Belonging::To::Order, "SELECT order_id FROM money_move WHERE id = ?1"},
};

const Belonging* belongingOf(std::string_view table) {
    const auto found = std::ranges::find(kBelongings, table, &Belonging::table);
    return found == kBelongings.end() ? nullptr : &*found;
}

class MovedLedgers {
public:
    explicit MovedLedgers(Connection& connection)
        : m_connection(connection) {}

    void add(const RowChange& change) {
        const Belonging* belonging = belongingOf(change.table);
        if (belonging == nullptr)
            return;
        Ids& ids = idsOf(belonging->to);
        for (const auto& value : {change.before(belonging->column), change.after(belonging->column)})
            if (value)
                ids.insert(std::stoll(*value));
        // An update holds only what it changes.
        if (change.kind == ChangeKind::Update)
            addFrom(ids, belonging->sqlOfRow, std::stoll(change.key));
        m_isMany = m_isMany || ids.size() > kFewLedgers;
    }

    bool isMany() const { return m_isMany; }

    std::vector<Sentence> faults() {
        // What an order or a garment becomes decides whether a unit of its lot is kept for it.
        for (const std::int64_t order : m_orders)
            addFrom(m_lots, "SELECT lot_id FROM garment WHERE order_id = ?1", order);
        for (const std::int64_t garment : m_garments)
            addFrom(m_lots, "SELECT lot_id FROM garment WHERE id = ?1", garment);
        std::vector<Sentence> faults;
        addFaults(faults, "SELECT message FROM lot_fault WHERE lot_id = ?1", m_lots);
        addFaults(faults, "SELECT message FROM roll_fault WHERE roll_id = ?1", m_rolls);
        addFaults(faults, "SELECT message FROM order_fault WHERE order_id = ?1", m_orders);
        addReserved(faults);
        return faults;
    }

private:
    Ids& idsOf(Belonging::To to) {
        switch (to) {
        case Belonging::To::Lot:
            return m_lots;
        case Belonging::To::Roll:
            return m_rolls;
        case Belonging::To::Order:
            return m_orders;
        case Belonging::To::Garment:
            break;
        }
        return m_garments;
    }

    void addFrom(Ids& ids, std::string_view sql, std::int64_t of) {
        Query rows = m_connection.query(sql, of);
        while (rows.step())
            if (!rows.isNull(0))
                ids.insert(rows.integer(0));
    }

    void addFaults(std::vector<Sentence>& faults, std::string_view sql, const Ids& ids) {
        for (const std::int64_t id : ids) {
            Query rows = m_connection.query(sql, id);
            while (rows.step())
                faults.push_back(asItIs(rows.text(0)));
        }
    }

    // By way of the open orders, which are few, and once for all lots.
    void addReserved(std::vector<Sentence>& faults) {
        if (m_lots.empty())
            return;
        Query rows{m_connection, "SELECT lot_id, message FROM reserved_fault"};
        while (rows.step())
            if (m_lots.contains(rows.integer(0)))
                faults.push_back(asItIs(rows.text(1)));
    }

    Connection& m_connection;
    Ids m_lots, m_rolls, m_orders, m_garments;
    bool m_isMany = false;
};

} // namespace

std::vector<Sentence> ledgerFaults(Connection& connection) {
    std::vector<Sentence> faults;
    if (!hasView(connection, "ledger_fault"))
        return faults;
    Query rows = connection.query("SELECT message FROM ledger_fault");
    while (rows.step())
        faults.push_back(asItIs(rows.text(0)));
    return faults;
}

std::vector<Sentence> ledgerFaults(Connection& connection, ChangesetView changes) {
    if (!hasView(connection, "reserved_fault")) // another schema, of a test
        return ledgerFaults(connection);
    const auto tables = tablesOf(changes);
    const bool movesAny = std::ranges::any_of(
        tables, [](const TableChanges& each) { return belongingOf(each.table) != nullptr; });
    if (!movesAny)
        return {};
    MovedLedgers moved{connection};
    forEachChange(changes, [&](const RowChange& change) {
        moved.add(change);
        return !moved.isMany();
    });
    return moved.isMany() ? ledgerFaults(connection) : moved.faults();
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/mend.h"

#include "db/check/check_parts.h"
#include "db/journal/ledger_faults.h"
#include "db/journal/recorded_tables.h"
#include "db/journal/unrecorded_transaction.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/foreign_keys.h"
#include "db/sqlite/stopping.h"

#include <algorithm>

namespace holdfast::db {

namespace {

// This many groups of rows at a time: what they hold is in memory.
constexpr std::size_t kGroupsAtOnce = 4'096;
constexpr int kMostRounds = 32;

// The full-text index and the tables that it keeps for itself.
bool isOfTheSearch(const std::string& name) {
    return name == "table order_text" || name.starts_with("table order_text_");
}

Schema statementsOf(Connection& connection) {
    Schema statements;
    Query rows{connection, "SELECT type || ' ' || name, sql FROM sqlite_schema WHERE sql IS NOT NULL"};
    while (rows.step())
        statements[rows.text(0)] = rows.text(1);
    return statements;
}

class Mending {
public:
    Mending(Connection& connection, std::span<const char* const> steps, const TellCheck& tell)
        : m_connection(connection)
        , m_wanted(schemaMadeBy(steps))
        , m_steps(steps)
        , m_tell(tell) {}

    Mended run() {
        const SchemaOdds odds = schemaOdds(m_connection, m_steps);
        say(0.05, phrase("the tables"));
        dropTriggers(); // each row that is written would move what is made again below
        mendTables(odds);
        mendRows();
        if (m_wanted.contains("table order_card"))
            makeCardsAgain();
        mendUndos();
        say(0.95, phrase("the triggers"));
        makeTriggers(odds);
        nameWhatIsLeft(odds);
        return std::move(m_mended);
    }

private:
    void say(double share, Phrase words) {
        if (m_tell && !m_tell(share, words))
            throw SqliteFailure::inWords(said("Stopped. Nothing was changed."));
    }

    void drop(const std::string& name) {
        const std::size_t space = name.find(' ');
        m_connection.script("DROP " + name.substr(0, space) + " IF EXISTS \"" + name.substr(space + 1) +
                            "\"");
    }

    void dropTriggers() {
        for (const auto& [name, sql] : statementsOf(m_connection))
            if (name.starts_with("trigger "))
                drop(name);
    }

    // Tables first: indexes and views are made over them.
    void mendTables(const SchemaOdds& odds) {
        for (const std::string& name : odds.missing)
            if (name.starts_with("table ") && !isOfTheSearch(name))
                make(name);
        for (const std::string& name : odds.foreign)
            if (name.starts_with("index ") || name.starts_with("view "))
                drop(name);
        for (const std::string& name : odds.other)
            if (name.starts_with("index ") || name.starts_with("view "))
                drop(name);
        for (const auto& [name, sql] : m_wanted)
            if (name.starts_with("view "))
                makeIfMissing(name);
    }

    void make(const std::string& name) {
        m_connection.script(m_wanted.at(name));
        m_mended.putRight.push_back(said("The {part} was made again.", {{"part", name}}));
    }

    void makeIfMissing(const std::string& name) {
        if (!statementsOf(m_connection).contains(name))
            make(name);
    }

    bool isJournalWhole() {
        Findings findings;
        checkJournal(m_connection, findings);
        checkLine(m_connection, findings);
        checkSeals(m_connection, {}, findings);
        checkMarks(m_connection, findings);
        Query lost{m_connection, "SELECT 1 FROM journal_subject WHERE entry_id NOT IN "
                                 "(SELECT id FROM journal_entry) LIMIT 1"};
        return findings.empty() && !lost.step();
    }

    void mendRows() {
        say(0.1, phrase("the rows"));
        if (!isJournalWhole()) {
            m_mended.left.push_back(said("Rows were not put right: the journal has lost entries, so the rows "
                                         "may be newer than what is left of their history."));
            return;
        }
        std::vector<RowOdds> left;
        for (int round = 0; round < kMostRounds; ++round) {
            HistoryFindings found = historyFindings(m_connection, {}, kGroupsAtOnce);
            const std::size_t before = m_mended.rows;
            left.clear();
            for (RowOdds& odds : found.rows)
                if (!putRight(odds))
                    left.push_back(std::move(odds));
            say(std::min(0.8, 0.1 + 0.1 * round), phrase("the rows"));
            if (found.moreGroups == 0 || m_mended.rows == before)
                break;
        }
        for (const RowOdds& odds : left)
            if (m_mended.left.size() < kMostNamed)
                m_mended.left.push_back(words(m_connection, odds));
    }

    // A row that no entry ever spoke of is left: the entry may be what is missing.
    bool putRight(const RowOdds& odds) {
        if (!odds.canBePutRight() || (odds.kind == RowOdds::Kind::Extra && !odds.wasDeleted))
            return false;
        Sentence sentence = words(m_connection, odds);
        try {
            write(odds);
        } catch (const SqliteFailure& failure) {
            if (failure.isOfTheDisk() || failure.isStopped())
                throw;
            return false; // the history itself has what the table forbids
        }
        ++m_mended.rows;
        if (m_mended.putRight.size() < kMostNamed)
            m_mended.putRight.push_back(std::move(sentence));
        return true;
    }

    void write(const RowOdds& odds) {
        const RecordedTable& table = tableNamed(odds.table);
        if (odds.kind == RowOdds::Kind::Missing) {
            std::string places;
            for (std::size_t at = 1; at <= odds.columns.size(); ++at)
                places += (at == 1 ? "?" : ", ?") + std::to_string(at);
            Query insert{m_connection, "INSERT INTO \"" + table.name + "\" (" + table.columnList() +
                                           ") VALUES (" + places + ")"};
            bindAll(insert, odds.history, 1);
            insert.run();
            return;
        }
        const bool isExtra = odds.kind == RowOdds::Kind::Extra;
        const std::size_t changed = isExtra ? 0 : odds.columns.size();
        std::string sql = (isExtra ? "DELETE FROM \"" : "UPDATE \"") + table.name + "\"";
        for (std::size_t at = 0; at < changed; ++at)
            sql += (at == 0 ? " SET \"" : ", \"") + odds.columns[at] + "\" = ?" + std::to_string(at + 1);
        Query statement{m_connection, sql + whereKey(table, changed)};
        if (!isExtra)
            bindAll(statement, odds.history, 1);
        bindAll(statement, odds.rowKey, static_cast<int>(changed) + 1);
        statement.run();
    }

    static void bindAll(Query& query, const std::vector<OwnedBytes>& values, int first) {
        for (const OwnedBytes& value : values) {
            if (isNothing(value))
                query.bind(first++, nullptr);
            else
                bindValue(query, first++, value);
        }
    }

    static std::string whereKey(const RecordedTable& table, std::size_t before) {
        std::string sql;
        for (std::size_t column = 0; column < table.columns.size(); ++column)
            if (table.isKey[column])
                sql += (sql.empty() ? " WHERE \"" : " AND \"") + table.columns[column] + "\" IS ?" +
                       std::to_string(++before);
        return sql;
    }

    const RecordedTable& tableNamed(const std::string& name) {
        if (m_tables.empty())
            m_tables = tablesOfHistory(m_connection);
        return *std::ranges::find(m_tables, name, &RecordedTable::name);
    }

    void makeCardsAgain() {
        say(0.8, phrase("the order book, the search and what the figures count"));
        m_connection.script("DROP TABLE IF EXISTS order_word; DROP TABLE IF EXISTS order_text");
        m_connection.script(m_wanted.at("table order_text"));
        m_connection.script(m_wanted.at("table order_word"));
        m_connection.run("DELETE FROM order_card");
        m_connection.run(
            "INSERT INTO order_card (id, number, customer, phone, words, state, promised, garments, "
            "total_minor, paid_minor) SELECT id, number, customer, phone, words, state, promised, "
            "garments, total_minor, paid_minor FROM order_card_source");
        m_connection.run("INSERT INTO order_text (order_text) VALUES ('rebuild')");
        if (!m_wanted.contains("table garment_card"))
            return;
        m_connection.run("DELETE FROM garment_card");
        m_connection.run("INSERT INTO garment_card (id, pressed_at, presses) "
                         "SELECT id, pressed_at, presses FROM garment_card_source");
    }

    void mendUndos() {
        m_connection.run("UPDATE journal_entry SET undone_by = NULL WHERE undone_by IS NOT NULL");
        for (const auto& [entry, by] : undoneByWhich(m_connection))
            m_connection.run("UPDATE journal_entry SET undone_by = ?2 WHERE id = ?1", entry, by);
    }

    void makeTriggers(const SchemaOdds& odds) {
        const auto isOdd = [&](const std::string& name) {
            return std::ranges::find(odds.missing, name) != odds.missing.end() ||
                   std::ranges::find(odds.other, name) != odds.other.end();
        };
        for (const auto& [name, sql] : m_wanted) {
            if (name.starts_with("index "))
                makeIfMissing(name);
            if (!name.starts_with("trigger "))
                continue;
            m_connection.script(sql);
            if (isOdd(name))
                m_mended.putRight.push_back(said("The {part} was made again.", {{"part", name}}));
        }
        for (const std::string& name : odds.foreign)
            if (!name.starts_with("table "))
                m_mended.putRight.push_back(
                    said("The {part}, which is not of a shop, was taken out.", {{"part", name}}));
    }

    void nameWhatIsLeft(const SchemaOdds& odds) {
        for (const auto* names : {&odds.foreign, &odds.other})
            for (const std::string& name : *names)
                if (name.starts_with("table ") && !isOfTheSearch(name))
                    m_mended.left.push_back(
                        said("The {part} is not as Holdfast makes it.", {{"part", name}}));
        for (Sentence& fault : ledgerFaults(m_connection))
            m_mended.left.push_back(std::move(fault));
    }

    Connection& m_connection;
    const Schema& m_wanted;
    std::span<const char* const> m_steps;
    const TellCheck& m_tell;
    std::vector<RecordedTable> m_tables;
    Mended m_mended;
};

} // namespace

Mended mendFile(Connection& connection, std::span<const char* const> steps, const TellCheck& tell) {
    return Mending{connection, steps, tell}.run();
}

Result<Mended> mendShop(Shop& shop, const TellCheck& tell) {
    if (shop.isReadOnly())
        return plainError(said("This shop is open for reading only."));
    Connection& connection = shop.connection();
    try {
        const std::vector<std::string> tables = recordedTables(connection);
        Mended mended;
        Shop::GoingOn from;
        {
            const ForeignKeysOff unchecked{connection};
            UnrecordedTransaction transaction{connection};
            mended = mendFile(connection, shop.steps(), tell);
            from = shop.goingOn();
            transaction.commit();
        }
        shop.goOn(from, {tables.begin(), tables.end()});
        return mended;
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/save.h"

#include "core/trade/unit_words.h"
#include "db/check/check_parts.h"
#include "db/check/mend.h"
#include "db/disk/file_probe.h"
#include "db/disk/new_file.h"
#include "db/journal/carried_entry.h"
#include "db/journal/line.h"
#include "db/journal/schema_upgrade.h"
#include "db/journal/shop_file.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/foreign_keys.h"
#include "db/sqlite/transaction.h"

#include <algorithm>
#include <array>

namespace holdfast::db {

namespace {

constexpr std::int64_t kRowsBetween = 5'000;

// Everything but what is made out of other rows, the journal first: the rest can be written from it.
std::vector<RecordedTable> tablesToSave(Connection& connection) {
    std::vector<RecordedTable> tables;
    Query names{connection,
                "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                "AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND name NOT LIKE '%\\_card' ESCAPE '\\' "
                "ORDER BY name LIKE 'seat%' DESC, name LIKE 'journal%' DESC, name"};
    while (names.step()) {
        RecordedTable& table = tables.emplace_back();
        table.name = names.text(0);
        Query columns =
            connection.query("SELECT name, pk > 0 FROM pragma_table_info(?1) ORDER BY cid", table.name);
        while (columns.step()) {
            table.columns.push_back(columns.text(0));
            table.isKey.push_back(columns.truth(1));
        }
    }
    return tables;
}

std::string spaced(std::string table) {
    std::ranges::replace(table, '_', ' ');
    return table;
}

class Saving {
public:
    Saving(Connection& from, Connection& to, const TellCheck& tell)
        : m_from(from)
        , m_to(to)
        , m_tell(tell) {}

    Saved run() {
        const auto steps = schemaSteps();
        applySteps(m_to, steps.first(stepsOf(steps.size())));
        {
            const ForeignKeysOff unchecked{m_to};
            Transaction transaction{m_to};
            dropTriggers();
            const auto tables = tablesToSave(m_to);
            for (std::size_t at = 0; at < tables.size(); ++at) {
                m_share = 0.6 * static_cast<double>(at) / static_cast<double>(tables.size());
                copy(tables[at]);
            }
            makeSeatHere();
            takeOutWhatRefersToNothing();
            endLineAtTheFirstLost();
            transaction.commit();
        }
        applySteps(m_to, steps);
        sealAgain();
        {
            say(0.7, phrase("the history of its rows"));
            const ForeignKeysOff unchecked{m_to};
            Transaction transaction{m_to};
            Mended mended = mendFile(m_to, steps);
            m_saved.fromHistory = static_cast<std::int64_t>(mended.rows);
            std::ranges::move(mended.left, std::back_inserter(m_saved.lost));
            takeOutWhatRefersToNothing();
            (void)mendFile(m_to, steps); // what was taken out is in no line of the order book
            transaction.commit();
        }
        return std::move(m_saved);
    }

private:
    void say(double share, Phrase words) {
        if (m_tell && !m_tell(share, words))
            throw SqliteFailure::inWords(said("Stopped. Nothing was left behind."));
    }

    // The step of a file whose head cannot be read is taken to be the newest.
    std::size_t stepsOf(std::size_t newest) {
        const std::int64_t applied = m_from.number("PRAGMA user_version");
        return applied >= 1 && applied <= static_cast<std::int64_t>(newest)
                   ? static_cast<std::size_t>(applied)
                   : newest;
    }

    void dropTriggers() {
        std::vector<std::string> names;
        Query rows{m_to, "SELECT name FROM sqlite_schema WHERE type = 'trigger'"};
        while (rows.step())
            names.push_back(rows.text(0));
        for (const std::string& name : names)
            m_to.script("DROP TRIGGER \"" + name + "\"");
    }

    std::string keyOrder(const RecordedTable& table, const char* direction) const {
        std::string order;
        for (std::size_t column = 0; column < table.columns.size(); ++column)
            if (table.isKey[column])
                order +=
                    (order.empty() ? " ORDER BY \"" : ", \"") + table.columns[column] + "\" " + direction;
        return order;
    }

    // Up to the first damaged page, and from the end back to the last one.
    void copy(const RecordedTable& table) {
        m_to.run("DELETE FROM \"" + table.name + "\""); // rows that the steps make are the file's own
        const bool isWhole = copyRows(table, "ASC");
        if (isWhole)
            return;
        copyRows(table, "DESC");
        m_saved.lost.push_back(
            said("Not every row of “{table}” could be read from the file.", {{"table", spaced(table.name)}}));
    }

    bool copyRows(const RecordedTable& table, const char* direction) {
        std::string places;
        for (std::size_t at = 1; at <= table.columns.size(); ++at)
            places += (at == 1 ? "?" : ", ?") + std::to_string(at);
        Query insert{m_to, "INSERT INTO \"" + table.name + "\" (" + table.columnList() + ") VALUES (" +
                               places + ") ON CONFLICT DO NOTHING"};
        RowBytes bytes;
        std::int64_t count = 0;
        try {
            Query rows{m_from, "SELECT " + table.columnList() + " FROM \"" + table.name + "\"" +
                                   keyOrder(table, direction)};
            while (rows.step()) {
                copyRow(table, insert, bytes.of(rows, table.columns.size()));
                if (++count % kRowsBetween == 0)
                    say(m_share, phrase("the rows of the file"));
            }
            return true;
        } catch (const SqliteFailure& failure) {
            if (failure.isDamage() || failure.isOfSchema())
                return false;
            throw;
        }
    }

    void copyRow(const RecordedTable& table, Query& insert, std::span<const ValueBytes> row) {
        const std::int64_t before = m_to.changesInAll();
        try {
            int place = 0;
            for (const ValueBytes value : row)
                bindValue(insert, ++place, value);
            insert.run();
            m_saved.rows += m_to.changesInAll() - before;
        } catch (const SqliteFailure& failure) {
            if (!failure.isOfARule())
                throw;
            insert.reset();
            if (m_saved.lost.size() < 10 * kMostNamed)
                m_saved.lost.push_back(
                    said("A row of “{table}” has what it must not have: {value}.",
                         {{"table", spaced(table.name)}, {"value", valueWords(row.front())}}));
        }
    }

    // One row says which laptop it is, and goes on above all that was given out.
    void makeSeatHere() {
        if (m_to.number("SELECT COUNT(*) FROM seat") == 0)
            m_to.run("INSERT INTO seat (id, name, first_order_number, last_order_number) "
                     "VALUES (1, 'This workshop', 1, 99999)");
        if (m_to.number("SELECT COUNT(*) FROM seat_here") == 1)
            return;
        m_to.run("DELETE FROM seat_here");
        m_to.run(
            "INSERT INTO seat_here (id, seat_id, last_id, next_order_number) SELECT 1, MIN(id), "
            "(SELECT COALESCE(MAX(id), 0) FROM journal_entry WHERE seat_id = (SELECT MIN(id) FROM seat)), "
            "(SELECT COALESCE(MAX(number), 0) + 1 FROM shop_order) FROM seat");
        m_saved.lost.push_back(
            said("Which laptop the file is on could not be read: it is taken for the workshop’s."));
    }

    // What came after a lost entry is known to the other laptops by what it says, not by its place.
    void endLineAtTheFirstLost() {
        if (m_to.number("SELECT COUNT(*) FROM sqlite_schema WHERE name = 'journal_line'") == 0)
            return;
        m_to.run("DELETE FROM journal_line WHERE place >= (SELECT MIN(place) FROM journal_line AS lost "
                 "WHERE lost.entry_id NOT IN (SELECT id FROM journal_entry) "
                 "AND lost.entry_id NOT IN (SELECT id FROM journal_aside))");
        m_to.run("DELETE FROM journal_line WHERE place > (SELECT COUNT(*) FROM journal_line)");
    }

    // An entry whose seal is lost gets another, and the line its marks.
    void sealAgain() {
        Transaction transaction{m_to};
        m_to.run("DELETE FROM journal_seal WHERE entry_id NOT IN (SELECT id FROM journal_entry) "
                 "AND entry_id NOT IN (SELECT id FROM journal_aside)");
        sealUnsealed(m_to);
        markLine(m_to);
        transaction.commit();
    }

    void takeOutWhatRefersToNothing() {
        struct Dangling {
            std::string table;
            std::int64_t row;
            std::string parent;
        };
        for (bool isAny = true; isAny;) {
            std::vector<Dangling> found;
            Query rows{
                m_to,
                "SELECT \"table\", rowid, parent FROM pragma_foreign_key_check WHERE rowid IS NOT NULL"};
            while (rows.step())
                found.push_back({rows.text(0), rows.integer(1), rows.text(2)});
            isAny = false;
            for (const Dangling& each : found) {
                const std::int64_t before = m_to.changesInAll();
                m_to.run("DELETE FROM \"" + each.table + "\" WHERE rowid = ?1", each.row);
                isAny = isAny || m_to.changesInAll() > before;
                if (m_saved.lost.size() < 10 * kMostNamed)
                    m_saved.lost.push_back(
                        said("A row of “{table}” was left out: what it belongs to in “{parent}” is lost.",
                             {{"table", spaced(each.table)}, {"parent", spaced(each.parent)}}));
            }
        }
    }

    Connection& m_from;
    Connection& m_to;
    const TellCheck& m_tell;
    double m_share = 0;
    Saved m_saved;
};

} // namespace

Result<Saved> saveWhatCanBe(const std::filesystem::path& damaged, const std::filesystem::path& newFile,
                            const TellCheck& tell) {
    if (auto there = probeFile(damaged); !there)
        return there.error();
    auto file = NewFile::begin(newFile);
    if (!file)
        return file.error();
    Saved saved;
    try {
        Connection from = Connection::open(damaged, Access::ReadOnly);
        Connection to = Connection::open(file->temporaryPath(), Access::ReadWrite);
        saved = Saving{from, to, tell}.run();
        to.script("PRAGMA journal_mode = WAL");
    } catch (const SqliteFailure& failure) {
        if (failure.isDamage())
            return plainError(
                said("Nothing of {damaged} can be read as a shop.", {{"damaged", damaged.string()}}));
        return failure.error();
    }
    if (auto kept = file->keep(); !kept)
        return kept.error();
    return saved;
}

} // namespace holdfast::db

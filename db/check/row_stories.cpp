// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/row_stories.h"

#include "db/sqlite/changeset.h"
#include "db/sqlite/connection.h"

#include <algorithm>
#include <utility>

namespace holdfast::db {

namespace {

// A table and the bytes of a key: the rows of one table are together.
using RowName = std::pair<std::string, OwnedBytes>;

OwnedBytes owned(ValueBytes value) {
    return {value.begin(), value.end()};
}

RowName nameOf(std::string_view table, const std::vector<bool>& isKey, std::span<const ValueBytes> row) {
    RowName name{std::string{table}, {}};
    for (std::size_t column = 0; column < row.size(); ++column)
        if (isKey[column])
            name.second.insert(name.second.end(), row[column].begin(), row[column].end());
    return name;
}

bool isSame(ValueBytes one, ValueBytes other) {
    return (isNull(one) && isNothing(other)) || (isNothing(one) && isNull(other)) ||
           std::ranges::equal(one, other);
}

ValueBytes valueAt(const std::vector<OwnedBytes>& values, std::size_t column) {
    return column < values.size() ? ValueBytes{values[column]} : ValueBytes{};
}

// Entries in the order in which they were applied here: the line that the laptops share, and then what was
// done here since.
std::vector<EntryId> entriesAsApplied(Connection& connection) {
    const bool hasLine =
        connection.number("SELECT COUNT(*) FROM sqlite_schema WHERE name = 'journal_line'") > 0;
    std::vector<EntryId> entries;
    Query rows{connection, hasLine ? "SELECT id FROM journal_entry LEFT JOIN journal_line ON entry_id = id "
                                     "ORDER BY place IS NULL, place, id"
                                   : "SELECT id FROM journal_entry ORDER BY id"};
    while (rows.step())
        entries.push_back(rows.id<EntryId>(0));
    return entries;
}

class Stories {
public:
    explicit Stories(const std::set<RowGroup>& groups)
        : m_groups(groups) {}

    void add(ChangesetView changeset, const std::string& title) {
        forEachValue(changeset, [&](const ValueChange& change) {
            if (m_groups.contains(groupOf(change.table, change.isKey, change.keyed())))
                add(m_told[nameOf(change.table, change.isKey, change.keyed())], change, title);
        });
    }

    std::map<RowName, RowStory> take() { return std::move(m_told); }

private:
    static void add(RowStory& story, const ValueChange& change, const std::string& title) {
        if (!follows(story, change) && !story.brokenBy)
            story.brokenBy = title;
        story.exists = change.kind != ChangeKind::Delete;
        story.wasDeleted = change.kind == ChangeKind::Delete;
        if (change.kind == ChangeKind::Insert)
            story.values.assign(change.after.size(), {});
        story.values.resize(std::max(story.values.size(), change.after.size()));
        for (std::size_t column = 0; column < change.after.size(); ++column)
            if (!isNothing(change.after[column]))
                story.values[column] = owned(change.after[column]);
    }

    // What it replaces is what the entries before it left.
    static bool follows(const RowStory& story, const ValueChange& change) {
        if (change.kind == ChangeKind::Insert)
            return !story.exists;
        if (!story.exists)
            return false;
        for (std::size_t column = 0; column < change.before.size(); ++column) {
            const bool isSaid = !isNothing(change.before[column]);
            if (isSaid && !isSame(valueAt(story.values, column), change.before[column]))
                return false;
        }
        return true;
    }

    const std::set<RowGroup>& m_groups;
    std::map<RowName, RowStory> m_told;
};

class Comparing {
public:
    Comparing(Connection& connection, const std::set<RowGroup>& groups)
        : m_connection(connection)
        , m_groups(groups) {}

    std::vector<RowOdds> run(const std::vector<RecordedTable>& tables) {
        readStories();
        for (const RecordedTable& table : tables)
            compare(table);
        return std::move(m_odds);
    }

private:
    void readStories() {
        Stories stories{m_groups};
        for (const EntryId entry : entriesAsApplied(m_connection)) {
            Query found =
                m_connection.query("SELECT title, changeset FROM journal_entry WHERE id = ?1", entry);
            try {
                if (found.step())
                    stories.add(found.bytes(1), found.text(0));
            } catch (const SqliteFailure& failure) {
                if (!failure.isDamage())
                    throw;
            }
        }
        m_stories = stories.take();
    }

    void compare(const RecordedTable& table) {
        std::set<RowName> here;
        RowBytes bytes;
        Query rows = m_connection.query("SELECT " + table.columnList() + " FROM \"" + table.name + "\"");
        while (rows.step()) {
            const auto row = bytes.of(rows, table.columns.size());
            if (!m_groups.contains(groupOf(table.name, table.isKey, row)))
                continue;
            RowName name = nameOf(table.name, table.isKey, row);
            compareRow(table, row, m_stories[name], keyOf(table, rows));
            here.insert(std::move(name));
        }
        for (const auto& [name, story] : m_stories)
            if (name.first == table.name && story.exists && !here.contains(name))
                addMissing(table, story);
    }

    std::string keyOf(const RecordedTable& table, const Query& row) const {
        std::vector<std::string> values;
        for (std::size_t column = 0; column < table.columns.size(); ++column)
            if (table.isKey[column])
                values.push_back(row.text(static_cast<int>(column)));
        return keyText(values);
    }

    void compareRow(const RecordedTable& table, std::span<const ValueBytes> row, const RowStory& story,
                    std::string key) {
        RowOdds odds;
        odds.kind = story.exists ? RowOdds::Kind::Differs : RowOdds::Kind::Extra;
        odds.table = table.name;
        odds.key = std::move(key);
        odds.brokenBy = story.brokenBy;
        odds.wasDeleted = story.wasDeleted;
        for (std::size_t column = 0; column < row.size(); ++column) {
            if (table.isKey[column])
                odds.rowKey.push_back(owned(row[column]));
            // What a step put into a column that the row's entries do not have yet is no doing of theirs.
            const bool isTold = column < story.values.size();
            if (!story.exists || !isTold || isSame(row[column], valueAt(story.values, column)))
                continue;
            odds.columns.push_back(table.columns[column]);
            odds.here.push_back(owned(row[column]));
            odds.history.push_back(owned(valueAt(story.values, column)));
        }
        const bool isAsTold = story.exists && odds.columns.empty();
        if (isAsTold && story.brokenBy)
            odds.kind = RowOdds::Kind::Broken;
        if (!isAsTold || story.brokenBy)
            m_odds.push_back(std::move(odds));
    }

    void addMissing(const RecordedTable& table, const RowStory& story) {
        RowOdds& odds = m_odds.emplace_back();
        odds.kind = RowOdds::Kind::Missing;
        odds.table = table.name;
        odds.brokenBy = story.brokenBy;
        std::vector<std::string> key;
        for (std::size_t column = 0; column < table.columns.size(); ++column) {
            const ValueBytes value = valueAt(story.values, column);
            odds.columns.push_back(table.columns[column]);
            odds.history.push_back(owned(value));
            if (!table.isKey[column])
                continue;
            odds.rowKey.push_back(owned(value));
            key.push_back(bareWords(value));
        }
        odds.key = keyText(key);
    }

    Connection& m_connection;
    const std::set<RowGroup>& m_groups;
    std::map<RowName, RowStory> m_stories;
    std::vector<RowOdds> m_odds;
};

} // namespace

std::vector<RowOdds> rowsAtOdds(Connection& connection, const std::vector<RecordedTable>& tables,
                                const std::set<RowGroup>& groups) {
    return Comparing{connection, groups}.run(tables);
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/changeset_form.h"

#include "db/sqlite/failure.h"

#include <sqlite3.h>

#include <algorithm>
#include <utility>

namespace holdfast::db {

namespace {

constexpr std::uint64_t kMostColumns = 2000; // SQLite's own limit of a table

enum class Held { Nothing, Null, Value };

class FormReader {
public:
    // Where each integer is: eight bytes, the highest first.
    using LookAtInteger = std::function<void(const std::string& table, std::size_t column, std::size_t at)>;

    explicit FormReader(ChangesetView bytes, LookAtInteger look = {})
        : m_rest(bytes)
        , m_start(bytes.data())
        , m_look(std::move(look)) {}

    bool readAll() {
        while (!m_rest.empty()) {
            const bool isRead = next() == std::byte{'T'} ? readTable() : !m_tables.empty() && readChange();
            if (!isRead)
                return false;
        }
        return true;
    }

    std::vector<TableChanges> takeTables() { return std::move(m_tables); }

private:
    std::byte next() const { return m_rest.front(); }

    bool skip(std::uint64_t count) {
        if (count > m_rest.size())
            return false;
        m_rest = m_rest.subspan(static_cast<std::size_t>(count));
        return true;
    }

    bool readTable() {
        std::uint64_t columns = 0;
        if (!skip(1) || !readNumber(columns) || columns == 0 || columns > kMostColumns ||
            columns > m_rest.size())
            return false;
        TableChanges& table = m_tables.emplace_back();
        for (const std::byte place : m_rest.first(static_cast<std::size_t>(columns)))
            table.isKey.push_back(place != std::byte{0});
        const bool hasKey = std::ranges::find(table.isKey, true) != table.isKey.end();
        return hasKey && skip(columns) && readName(table.table);
    }

    bool readName(std::string& name) {
        const auto end = std::ranges::find(m_rest, std::byte{0});
        if (end == m_rest.end() || end == m_rest.begin())
            return false;
        for (auto letter = m_rest.begin(); letter != end; ++letter)
            name.push_back(std::to_integer<char>(*letter));
        return skip(name.size() + 1);
    }

    bool readChange() {
        const int operation = std::to_integer<int>(next());
        if (!skip(2)) // its second byte says whether a trigger made it
            return false;
        switch (operation) {
        case SQLITE_INSERT:
            ++table().inserted;
            return readRow(m_before) && isWholeRow();
        case SQLITE_DELETE:
            ++table().deleted;
            return readRow(m_before) && isWholeRow();
        case SQLITE_UPDATE:
            ++table().updated;
            return readRow(m_before) && readRow(m_after) && isUpdate();
        default:
            return false;
        }
    }

    TableChanges& table() { return m_tables.back(); }
    const std::vector<bool>& isKey() const { return m_tables.back().isKey; }

    bool readRow(std::vector<Held>& row) {
        row.assign(isKey().size(), Held::Nothing);
        for (std::size_t column = 0; column < row.size(); ++column)
            if (!readValue(row[column], column))
                return false;
        return true;
    }

    bool readValue(Held& held, std::size_t column) {
        if (m_rest.empty())
            return false;
        const int type = std::to_integer<int>(next());
        if (!skip(1))
            return false;
        held = type == 0 ? Held::Nothing : type == SQLITE_NULL ? Held::Null : Held::Value;
        std::uint64_t length = 8;
        switch (type) {
        case 0:
        case SQLITE_NULL:
            return true;
        case SQLITE_INTEGER:
            if (m_look && m_rest.size() >= length)
                m_look(table().table, column, static_cast<std::size_t>(m_rest.data() - m_start));
            return skip(length);
        case SQLITE_FLOAT:
            return skip(length);
        case SQLITE_TEXT:
        case SQLITE_BLOB:
            return readNumber(length) && skip(length);
        default:
            return false;
        }
    }

    bool isWholeRow() const { return std::ranges::count(m_before, Held::Nothing) == 0 && hasWholeKey(); }

    bool hasWholeKey() const {
        for (std::size_t column = 0; column < isKey().size(); ++column)
            if (isKey()[column] && m_before[column] != Held::Value)
                return false;
        return true;
    }

    bool isUpdate() const {
        for (std::size_t column = 0; column < isKey().size(); ++column) {
            const bool isAfter = m_after[column] != Held::Nothing;
            const bool isBefore = m_before[column] != Held::Nothing;
            if (isKey()[column] ? isAfter : isAfter != isBefore)
                return false;
        }
        return hasWholeKey();
    }

    // SQLite's variable-length number: seven bits a byte, the ninth byte whole.
    bool readNumber(std::uint64_t& number) {
        number = 0;
        for (int at = 0; at < 9; ++at) {
            if (m_rest.empty())
                return false;
            const auto byte = std::to_integer<std::uint64_t>(next());
            (void)skip(1);
            if (at == 8) {
                number = (number << 8) | byte;
                return true;
            }
            number = (number << 7) | (byte & 0x7F);
            if (byte < 0x80)
                return true;
        }
        return false;
    }

    ChangesetView m_rest;
    const std::byte* m_start;
    LookAtInteger m_look;
    std::vector<TableChanges> m_tables; // the last is being read
    std::vector<Held> m_before;
    std::vector<Held> m_after;
};

constexpr std::size_t kIdBytes = 8;

std::int64_t numberAt(ChangesetView bytes, std::size_t at) {
    std::uint64_t number = 0;
    for (const std::byte byte : bytes.subspan(at, kIdBytes))
        number = (number << 8) | std::to_integer<std::uint64_t>(byte);
    return static_cast<std::int64_t>(number);
}

void putNumber(Changeset& bytes, std::size_t at, std::int64_t number) {
    for (std::size_t byte = 0; byte < kIdBytes; ++byte)
        bytes[at + byte] = static_cast<std::byte>(
            (static_cast<std::uint64_t>(number) >> (8 * (kIdBytes - 1 - byte))) & 0xFF);
}

} // namespace

bool isWhole(ChangesetView changeset) {
    return FormReader{changeset}.readAll();
}

void requireWhole(ChangesetView changeset) {
    (void)tablesOf(changeset);
}

std::vector<TableChanges> tablesOf(ChangesetView changeset) {
    FormReader reader{changeset};
    if (!reader.readAll())
        throw SqliteFailure{SQLITE_CORRUPT, "a journal entry is damaged"};
    return reader.takeTables();
}

Changeset withOtherNumbers(ChangesetView changeset, const std::map<std::int64_t, std::int64_t>& instead,
                           const IsIdColumn& isId) {
    Changeset changed(changeset.begin(), changeset.end());
    if (instead.empty())
        return changed;
    FormReader reader{changeset, [&](const std::string& table, std::size_t column, std::size_t at) {
                          const auto other = instead.find(numberAt(changeset, at));
                          if (other != instead.end() && isId(table, column))
                              putNumber(changed, at, other->second);
                      }};
    if (!reader.readAll())
        throw SqliteFailure{SQLITE_CORRUPT, "a journal entry is damaged"};
    return changed;
}

std::int64_t changeCount(ChangesetView changeset) {
    std::int64_t count = 0;
    for (const TableChanges& changes : tablesOf(changeset))
        count += changes.rows();
    return count;
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/query.h"

#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <algorithm>
#include <utility>

namespace holdfast::db {

namespace {

[[noreturn]] void throwNoDate(sqlite3_stmt* statement, std::string_view text) {
    throw SqliteFailure{SQLITE_CORRUPT, "\"" + std::string{text} + "\" is no date", sqlite3_sql(statement)};
}

} // namespace

Query::Query(Connection& connection, std::string_view sql)
    : m_connection(&connection)
    , m_statement(connection.take(sql)) {}

Query::Query(Query&& other) noexcept
    : m_connection(other.m_connection)
    , m_statement(std::exchange(other.m_statement, nullptr)) {}

Query::~Query() {
    if (m_statement != nullptr)
        m_connection->giveBack(m_statement);
}

Query& Query::bind(int place, std::nullptr_t) {
    require(m_connection->handle(), sqlite3_bind_null(m_statement, place), sqlite3_sql(m_statement));
    return *this;
}

Query& Query::bind(int place, std::string_view text) {
    // An empty view may have no address at all, which SQLite would take for NULL.
    const char* start = text.empty() ? "" : text.data();
    require(m_connection->handle(),
            sqlite3_bind_text64(m_statement, place, start, text.size(), SQLITE_TRANSIENT, SQLITE_UTF8),
            sqlite3_sql(m_statement));
    return *this;
}

Query& Query::bind(int place, std::span<const std::byte> bytes) {
    const void* start = bytes.empty() ? static_cast<const void*>("") : bytes.data();
    require(m_connection->handle(),
            sqlite3_bind_blob64(m_statement, place, start, bytes.size(), SQLITE_TRANSIENT),
            sqlite3_sql(m_statement));
    return *this;
}

Query& Query::bind(int place, LocalDate date) {
    return bind(place, isoDate(date));
}

Query& Query::bind(int place, LocalTime time) {
    return bind(place, isoLocalMinute(time));
}

Query& Query::bindInteger(int place, std::int64_t number) {
    require(m_connection->handle(), sqlite3_bind_int64(m_statement, place, number), sqlite3_sql(m_statement));
    return *this;
}

Query& Query::bindReal(int place, double number) {
    require(m_connection->handle(), sqlite3_bind_double(m_statement, place, number),
            sqlite3_sql(m_statement));
    return *this;
}

bool Query::step() {
    m_connection->requireWritable(m_statement);
    const int code = sqlite3_step(m_statement);
    if (code == SQLITE_ROW)
        return true;
    if (code != SQLITE_DONE) {
        const auto failure = SqliteFailure::of(m_connection->handle(), code, sqlite3_sql(m_statement));
        sqlite3_reset(m_statement);
        throw failure;
    }
    // A statement that is done but not reset would keep its view of the file alive.
    sqlite3_reset(m_statement);
    return false;
}

void Query::run() {
    while (step()) {
    }
}

void Query::reset() {
    sqlite3_reset(m_statement);
}

bool Query::isNull(int column) const {
    return sqlite3_column_type(m_statement, column) == SQLITE_NULL;
}

int Query::type(int column) const {
    return sqlite3_column_type(m_statement, column);
}

std::string Query::columnName(int column) const {
    const char* name = sqlite3_column_name(m_statement, column);
    return name == nullptr ? std::string{} : name;
}

std::int64_t Query::integer(int column) const {
    return sqlite3_column_int64(m_statement, column);
}

double Query::real(int column) const {
    return sqlite3_column_double(m_statement, column);
}

std::string Query::text(int column) const {
    return std::string{view(column)};
}

std::string_view Query::view(int column) const {
    const auto* start = reinterpret_cast<const char*>(sqlite3_column_text(m_statement, column));
    if (start == nullptr)
        return {};
    return {start, static_cast<std::size_t>(sqlite3_column_bytes(m_statement, column))};
}

std::span<const std::byte> Query::bytes(int column) const {
    const auto* start = static_cast<const std::byte*>(sqlite3_column_blob(m_statement, column));
    return {start,
            start == nullptr ? 0 : static_cast<std::size_t>(sqlite3_column_bytes(m_statement, column))};
}

void Query::copyBytes(int column, std::span<std::byte> into) const {
    const auto stored = bytes(column);
    if (stored.size() != into.size())
        throw SqliteFailure{SQLITE_CORRUPT, "a value has not the length that it should have",
                            sqlite3_sql(m_statement)};
    std::ranges::copy(stored, into.begin());
}

Instant Query::instant(int column) const {
    return Instant{std::chrono::seconds{integer(column)}};
}

LocalDate Query::date(int column) const {
    const auto date = parseIsoDate(view(column));
    if (!date)
        throwNoDate(m_statement, view(column));
    return *date;
}

LocalTime Query::localTime(int column) const {
    const auto time = parseIsoMinute(view(column));
    if (!time)
        throwNoDate(m_statement, view(column));
    return *time;
}

std::optional<std::int64_t> Query::optionalInteger(int column) const {
    return isNull(column) ? std::nullopt : std::optional{integer(column)};
}

std::optional<double> Query::optionalReal(int column) const {
    return isNull(column) ? std::nullopt : std::optional{real(column)};
}

std::optional<std::string> Query::optionalText(int column) const {
    return isNull(column) ? std::nullopt : std::optional{text(column)};
}

std::optional<Instant> Query::optionalInstant(int column) const {
    return isNull(column) ? std::nullopt : std::optional{instant(column)};
}

std::optional<LocalDate> Query::optionalDate(int column) const {
    return isNull(column) ? std::nullopt : std::optional{date(column)};
}

std::optional<LocalTime> Query::optionalLocalTime(int column) const {
    return isNull(column) ? std::nullopt : std::optional{localTime(column)};
}

} // namespace holdfast::db

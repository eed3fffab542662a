// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/fact_row.h"

#include <sqlite3.h>

#include <cmath>

namespace holdfast::db {

namespace {

constexpr Instant kEarliest{};
constexpr Instant kLatest{std::chrono::sys_days{std::chrono::year{2400} / 1 / 1}};

} // namespace

bool isInstant(std::int64_t seconds) {
    return seconds >= kEarliest.time_since_epoch().count() && seconds <= kLatest.time_since_epoch().count();
}

std::int64_t FactRow::number(int column, std::int64_t least, std::int64_t most) const {
    if (m_query.type(column) != SQLITE_INTEGER)
        unread(column);
    const std::int64_t number = m_query.integer(column);
    if (number < least || number > most)
        unread(column);
    return number;
}

double FactRow::measure(int column, double least, double most) const {
    if (m_query.type(column) != SQLITE_FLOAT && m_query.type(column) != SQLITE_INTEGER)
        unread(column);
    const double measured = m_query.real(column);
    if (!(measured >= least && measured <= most))
        unread(column);
    return measured;
}

bool FactRow::isText(int column) const {
    return m_query.type(column) == SQLITE_TEXT;
}

std::string FactRow::text(int column) const {
    if (!isText(column))
        unread(column);
    return m_query.text(column);
}

LocalDate FactRow::date(int column) const {
    const auto date = isText(column) ? parseIsoDate(m_query.view(column)) : std::nullopt;
    if (!date || date->time_since_epoch() < kEarliest.time_since_epoch() ||
        date->time_since_epoch() > kLatest.time_since_epoch())
        unread(column);
    return *date;
}

LocalTime FactRow::localTime(int column) const {
    const auto time = isText(column) ? parseIsoMinute(m_query.view(column)) : std::nullopt;
    if (!time || time->time_since_epoch() < kEarliest.time_since_epoch() ||
        time->time_since_epoch() > kLatest.time_since_epoch())
        unread(column);
    return *time;
}

Instant FactRow::instant(int column) const {
    return Instant{std::chrono::seconds{
        number(column, kEarliest.time_since_epoch().count(), kLatest.time_since_epoch().count())}};
}

void FactRow::unread(int column) const {
    throw UnreadValue{m_query.columnName(column), m_query.isNull(column) ? "" : m_query.text(column)};
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rows of one query as facts: every value is looked at, for a file may hold what no action wrote. A row
// of which a value cannot be read is left out and noted; the rest of the query goes on. A page that cannot be
// read is another matter and still throws SqliteFailure.
//
//   readFacts(rows, unread, "press_step", [&](const FactRow& row) {
//       steps.push_back({row.id<GarmentId>(0), row.count(1), row.text(2), …});
//   });

#include "db/sqlite/connection.h"
#include "db/tables/codes.h"
#include "db/tables/unread_facts.h"

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast::db {

// What no shop comes near, and what sums and areas of it still fit into 64 bits.
inline constexpr std::int64_t kMostMillimetres = 10'000'000;
inline constexpr std::int64_t kMostMinor = 1'000'000'000'000;
inline constexpr std::int64_t kMostCount = 1'000'000'000;
inline constexpr std::int64_t kMinutesOfADay = 24 * 60;

// A moment that a shop can have been at, in seconds.
bool isInstant(std::int64_t seconds);

class FactRow {
public:
    explicit FactRow(const Query& query)
        : m_query(query) {}

    bool isNull(int column) const { return m_query.isNull(column); }

    // Each throws UnreadValue for what it does not name.
    std::int64_t number(int column, std::int64_t least, std::int64_t most) const;
    double measure(int column, double least, double most) const;
    std::string text(int column) const; // may be empty, not NULL
    LocalDate date(int column) const;
    LocalTime localTime(int column) const;
    Instant instant(int column) const;

    template <class AnyId>
    AnyId id(int column) const {
        return AnyId{number(column, 1, std::numeric_limits<std::int64_t>::max())};
    }
    int count(int column) const { return static_cast<int>(number(column, 0, kMostCount)); }
    bool truth(int column) const { return number(column, 0, 1) != 0; }
    Millimetres length(int column) const {
        return Millimetres{number(column, -kMostMillimetres, kMostMillimetres)};
    }
    // A thing of no width cannot be drawn, cut or pressed.
    Millimetres extent(int column) const { return Millimetres{number(column, 1, kMostMillimetres)}; }
    Money money(int column) const { return Money{number(column, -kMostMinor, kMostMinor)}; }
    Celsius temperature(int column) const { return Celsius{measure(column, -273.15, 1000)}; }
    Humidity humidity(int column) const { return Humidity{measure(column, 0, 100)}; }
    std::uint32_t shade(int column) const { return static_cast<std::uint32_t>(number(column, 0, 0xFFFFFF)); }
    template <class Duration>
    Duration lasting(int column) const {
        return Duration{number(column, 0, kMostDuration)};
    }
    template <class Choice>
    Choice choice(int column) const {
        if (isText(column))
            if (const auto known = knownCode<Choice>(m_query.view(column)))
                return *known;
        unread(column);
    }

    template <class AnyId>
    std::optional<AnyId> optionalId(int column) const {
        return isNull(column) ? std::nullopt : std::optional{id<AnyId>(column)};
    }
    std::optional<Instant> optionalInstant(int column) const {
        return isNull(column) ? std::nullopt : std::optional{instant(column)};
    }
    std::optional<LocalDate> optionalDate(int column) const {
        return isNull(column) ? std::nullopt : std::optional{date(column)};
    }

    [[noreturn]] void unread(int column) const;

private:
    // A hundred years in hours, and still two weeks in seconds.
    static constexpr std::int64_t kMostDuration = 1'000'000;

    bool isText(int column) const;

    const Query& m_query;
};

// Calls `read(row)` for each row; for one that cannot be read, `leave(row)` after it was noted as a row of
// `table` whose key is in the first `keyColumns` columns.
template <class Read, class Leave>
void readFacts(Query& rows, UnreadFacts& unread, std::string_view table, Read&& read, Leave&& leave,
               int keyColumns = 1) {
    while (rows.step()) {
        const FactRow row{rows};
        try {
            read(row);
        } catch (const UnreadValue& value) {
            unread.add(table, rows, keyColumns, value);
            leave(rows);
        }
    }
}

template <class Read>
void readFacts(Query& rows, UnreadFacts& unread, std::string_view table, Read&& read) {
    readFacts(rows, unread, table, std::forward<Read>(read), [](const Query&) {});
}

} // namespace holdfast::db

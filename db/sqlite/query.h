// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One use of a prepared statement: bind, step through the rows, read the columns.
//
//   Query rows{connection, "SELECT id, name FROM film WHERE shade = ?1"};
//   rows.bind(1, shade);
//   while (rows.step())
//       films.push_back({rows.id<FilmId>(0), rows.text(1)});
//
// The statement comes out of the connection's cache and goes back, reset, when the Query ends. Two uses of
// the same text at once get a statement each. Places are counted from 1, columns from 0. Everything throws
// SqliteFailure; a Query must not outlive its Connection.
//
// How values are stored: ids, millimetres, grams, money (smallest coin), durations (their count), truth
// values and instants (UTC seconds) as INTEGER; temperature and humidity as REAL; dates and local times as
// ISO TEXT; an empty optional as NULL. Choices (enum class) are text that their table's code writes, so they
// do not bind.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/units.h"

#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

struct sqlite3_stmt;

namespace holdfast::db {

class Connection;

class Query {
public:
    Query(Connection& connection, std::string_view sql);
    Query(Query&& other) noexcept;
    Query(const Query&) = delete;
    Query& operator=(const Query&) = delete;
    Query& operator=(Query&&) = delete;
    ~Query();

    Query& bind(int place, std::nullptr_t);
    Query& bind(int place, std::string_view text);
    Query& bind(int place, const std::string& text) { return bind(place, std::string_view{text}); }
    Query& bind(int place, const char* text) { return bind(place, std::string_view{text}); }
    Query& bind(int place, std::span<const std::byte> bytes);
    Query& bind(int place, LocalDate date);
    Query& bind(int place, LocalTime time);
    Query& bind(int place, Instant instant) { return bindInteger(place, instant.time_since_epoch().count()); }
    Query& bind(int place, Millimetres length) { return bindInteger(place, length.value); }
    Query& bind(int place, Grams weight) { return bindInteger(place, weight.value); }
    Query& bind(int place, Celsius temperature) { return bindReal(place, temperature.value); }
    Query& bind(int place, Humidity humidity) { return bindReal(place, humidity.percent); }

    template <std::integral Number>
    Query& bind(int place, Number number) {
        return bindInteger(place, static_cast<std::int64_t>(number));
    }
    template <std::floating_point Number>
    Query& bind(int place, Number number) {
        return bindReal(place, static_cast<double>(number));
    }
    template <class Kind>
    Query& bind(int place, Id<Kind> id) {
        return bindInteger(place, id.value);
    }
    template <class Period>
    Query& bind(int place, std::chrono::duration<std::int64_t, Period> span) {
        return bindInteger(place, span.count());
    }
    // std::chrono::days counts in a narrower integer.
    Query& bind(int place, Days days) { return bindInteger(place, days.count()); }
    // Money: an amount in the shop's smallest coin.
    template <class Amount>
        requires requires(const Amount& amount) {
            { amount.minor } -> std::convertible_to<std::int64_t>;
        }
    Query& bind(int place, const Amount& amount) {
        return bindInteger(place, amount.minor);
    }
    template <class Value>
    Query& bind(int place, const std::optional<Value>& value) {
        return value ? bind(place, *value) : bind(place, nullptr);
    }

    // Binds the values to places 1, 2, 3 …
    template <class... Values>
    Query& bindAll(const Values&... values) {
        int place = 0;
        (bind(++place, values), ...);
        return *this;
    }

    // True while there is a row. After false the statement is at its beginning again.
    bool step();
    // Steps to the end, for a statement whose rows nobody wants.
    void run();
    // Back to the beginning, with the bound values kept.
    void reset();

    bool isNull(int column) const;
    int type(int column) const; // SQLITE_INTEGER and the like
    std::string columnName(int column) const;
    std::int64_t integer(int column) const;
    double real(int column) const;
    bool truth(int column) const { return integer(column) != 0; }
    std::string text(int column) const;
    // Valid until the next step.
    std::string_view view(int column) const;
    std::span<const std::byte> bytes(int column) const;
    // Throws a damage failure where there are not exactly as many.
    template <std::size_t count>
    std::array<std::byte, count> fixedBytes(int column) const {
        std::array<std::byte, count> fixed{};
        copyBytes(column, fixed);
        return fixed;
    }
    Instant instant(int column) const;
    // Throws a damage failure where the text is no date.
    LocalDate date(int column) const;
    LocalTime localTime(int column) const;
    template <class AnyId>
    AnyId id(int column) const {
        return AnyId{integer(column)};
    }

    std::optional<std::int64_t> optionalInteger(int column) const;
    std::optional<double> optionalReal(int column) const;
    std::optional<std::string> optionalText(int column) const;
    std::optional<Instant> optionalInstant(int column) const;
    std::optional<LocalDate> optionalDate(int column) const;
    std::optional<LocalTime> optionalLocalTime(int column) const;
    template <class AnyId>
    std::optional<AnyId> optionalId(int column) const {
        return isNull(column) ? std::nullopt : std::optional{id<AnyId>(column)};
    }

private:
    void copyBytes(int column, std::span<std::byte> into) const;
    Query& bindInteger(int place, std::int64_t number);
    Query& bindReal(int place, double number);

    Connection* m_connection;
    sqlite3_stmt* m_statement;
};

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is written of a shop as comma-separated values: one file a thing of the trade, and in it which
// columns.

#include <span>
#include <string_view>

namespace holdfast::db {

enum class CellKind {
    Text,      // what a person wrote
    Plain,     // numbers, days and words of the program's own
    Money,     // "26.50"; the heading gets the currency
    When,      // an instant as local time: "2026-11-25 15:00"
    Moment,    // an instant to the second with what local time is ahead of UTC: "2026-11-25T15:00:00+01:00"
    LocalTime, // a local time of the file: "2026-11-25 15:00"
    YesNo,
    Rgb,     // "#6B7F5A"
    Roll,    // "R-09"
    Garment, // "418-b", out of two columns: the order's number and the garment's place in it
};

struct ExportColumn {
    std::string_view heading;
    CellKind kind;
};

struct ExportTable {
    std::string_view file; // "orders.csv"
    std::string_view query;
    std::span<const ExportColumn> columns;
};

// In the order in which they are written. Headings and file names stay as they are; columns may be added at
// the end.
std::span<const ExportTable> exportTables();

} // namespace holdfast::db

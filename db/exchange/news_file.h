// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The news file: a small SQLite file with the entries that are carried, and a sum over all that it holds.

#include "core/trade/dates.h"
#include "core/trade/result.h"
#include "db/exchange/exchange.h"
#include "db/journal/carried_entry.h"
#include "db/journal/line.h"
#include "db/sqlite/connection.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

// What it says of itself.
struct NewsLabel {
    std::int64_t shop = 0;
    std::int64_t schemaStep = 0;
    SeatNumber from = 0;
    std::string fromName;
    SeatNumber to = 0;
    Instant writtenAt{};
    PlaceInLine known; // how far the writer knows the line
    // The entries are those of the line after this place and, from a laptop, what it did over it. That is
    // further back than the reader is known to be, for it may have been put back since.
    PlaceInLine behind;
    std::int64_t since = 0; // the place that the reader is known to be at: what comes after it is news
    std::int64_t incarnation = 0;
    std::int64_t entries = 0;

    std::int64_t ofTheLine() const { return known.place - behind.place; }
};

// Writing: begin, add each, then close with the label. Throws SqliteFailure.
class NewsWriter {
public:
    // `path` is an empty file that nobody else reads yet.
    explicit NewsWriter(const std::filesystem::path& path);

    void add(const CarriedEntry& entry);
    // The laptops, for their names and order numbers.
    void add(const Seat& seat);
    void close(NewsLabel label);
    std::int64_t entries() const { return m_entries; }

private:
    Connection m_file;
    std::int64_t m_entries = 0;
};

class NewsReader {
public:
    // Reads all of it once. Refused in words: what is no news, damaged, only half copied, or has anything in
    // it that NewsWriter does not write.
    static Result<NewsReader> open(const std::filesystem::path& path, const TellProgress& progress = {});

    const NewsLabel& label() const { return m_label; }
    std::vector<Seat> seats();
    // By its number in the file, from 1 to label().entries.
    CarriedEntry entry(std::int64_t number);

private:
    explicit NewsReader(Connection file);
    Result<Done> readThrough(const std::filesystem::path& path, const TellProgress& progress);

    Connection m_file;
    NewsLabel m_label;
};

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A small workshop for the tests of the journal: lots of blanks with a ledger of moves, notes with a
// full-text search, and a clock that stands where it is put.

#include "db/journal/shop.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <unistd.h>

namespace holdfast::db::testing {

using namespace std::chrono_literals;

inline constexpr Instant kMorning = std::chrono::sys_days{std::chrono::year{2026} / 11 / 25} + 9h;

inline constexpr const char* kSmallShop = R"(
CREATE TABLE lot (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE, shade TEXT) STRICT;
CREATE TABLE move (id INTEGER PRIMARY KEY, lot_id INTEGER NOT NULL REFERENCES lot (id), units INTEGER NOT NULL) STRICT;
CREATE TABLE lot_fibre (lot_id INTEGER NOT NULL REFERENCES lot, fibre TEXT NOT NULL, percent INTEGER NOT NULL,
                        PRIMARY KEY (lot_id, fibre)) STRICT, WITHOUT ROWID;
CREATE VIRTUAL TABLE order_text USING fts5 (name, content = 'lot', content_rowid = 'id');
CREATE TRIGGER lot_added AFTER INSERT ON lot BEGIN
    INSERT INTO order_text (rowid, name) VALUES (NEW.id, NEW.name);
END;
CREATE TRIGGER lot_removed AFTER DELETE ON lot BEGIN
    INSERT INTO order_text (order_text, rowid, name) VALUES ('delete', OLD.id, OLD.name);
END;
CREATE TRIGGER lot_renamed AFTER UPDATE OF name ON lot BEGIN
    INSERT INTO order_text (order_text, rowid, name) VALUES ('delete', OLD.id, OLD.name);
    INSERT INTO order_text (rowid, name) VALUES (NEW.id, NEW.name);
END;
CREATE VIEW ledger_fault AS
    SELECT lot.name || ' would have ' || SUM(units) || ' left.' AS message
    FROM lot JOIN move ON move.lot_id = lot.id GROUP BY lot.id HAVING SUM(units) < 0;
)";

// What the journal of a real shop has beside the entries.
inline constexpr const char* kExchangeTables = R"(
CREATE TABLE journal_shop (id INTEGER PRIMARY KEY, shop INTEGER NOT NULL) STRICT;
CREATE TABLE journal_line (place INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL UNIQUE, mark INTEGER NOT NULL) STRICT;
CREATE TABLE journal_aside (id INTEGER PRIMARY KEY, seat_id INTEGER NOT NULL, at INTEGER NOT NULL, title TEXT NOT NULL,
                            undoes INTEGER, why TEXT NOT NULL, changeset BLOB NOT NULL) STRICT;
CREATE TABLE journal_aside_subject (entry_id INTEGER NOT NULL, kind TEXT NOT NULL, subject_id INTEGER NOT NULL,
                                    PRIMARY KEY (entry_id, kind, subject_id)) STRICT, WITHOUT ROWID;
CREATE TABLE journal_remark (entry_id INTEGER PRIMARY KEY, words TEXT NOT NULL) STRICT;
CREATE TABLE seat_known (seat_id INTEGER PRIMARY KEY, place INTEGER NOT NULL, at INTEGER NOT NULL) STRICT;
)";

// Its journal is that of a real shop.
inline std::span<const char* const> smallSteps() {
    static constexpr std::size_t kIdentities = 8;
    static constexpr std::size_t kSayings = 12;
    static const std::string journal = std::string{schemaSteps().front()} + kExchangeTables +
                                       schemaSteps()[kIdentities] + schemaSteps()[kIdentities + 1] +
                                       schemaSteps()[kSayings];
    static const std::array steps{journal.c_str(), kSmallShop};
    return steps;
}

// Where the tests write: in memory if there is such a place, for what they test is what survives a killed
// program, and a busy disk makes hundreds of commits slow. HOLDFAST_TEST_FOLDER puts them on a disk of one's
// choice.
inline std::filesystem::path testRoot() {
    if (const char* chosen = std::getenv("HOLDFAST_TEST_FOLDER"))
        return chosen;
    const std::filesystem::path memory = "/dev/shm";
    return access(memory.c_str(), W_OK) == 0 ? memory : std::filesystem::temp_directory_path();
}

// A folder of its own, gone with everything in it at the end.
class TemporaryFolder {
public:
    TemporaryFolder() {
        std::string name = (testRoot() / "holdfast-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr)
            std::abort();
        m_path = name;
    }
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    ~TemporaryFolder() {
        std::error_code ignored;
        std::filesystem::permissions(m_path, std::filesystem::perms::owner_all, ignored);
        std::filesystem::remove_all(m_path, ignored);
    }

    const std::filesystem::path& path() const { return m_path; }
    std::filesystem::path operator/(const std::string& name) const { return m_path / name; }

    std::vector<std::string> names() const {
        std::vector<std::string> found;
        for (const auto& entry : std::filesystem::directory_iterator{m_path})
            found.push_back(entry.path().filename().string());
        std::sort(found.begin(), found.end());
        return found;
    }

private:
    std::filesystem::path m_path;
};

// Empty for what is no file.
inline std::string bytesOf(const std::filesystem::path& path) {
    if (!std::filesystem::is_regular_file(path))
        return {};
    std::string bytes(std::filesystem::file_size(path), '\0');
    std::ifstream{path, std::ios::binary}.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    return bytes;
}

inline void writeBytes(const std::filesystem::path& path, std::string_view bytes) {
    std::ofstream{path, std::ios::binary | std::ios::trunc}.write(bytes.data(),
                                                                  static_cast<std::streamsize>(bytes.size()));
}

// The message of a refusal, or "done".
template <class T>
std::string wordsOf(const Result<T>& result) {
    return result ? "done" : result.error().message.english();
}

inline Clock standingClock(Instant at = kMorning) {
    return [at] { return at; };
}

inline std::unique_ptr<Shop> aShop() {
    return Shop::createInMemory(standingClock(), smallSteps());
}

inline std::unique_ptr<Shop> aShopIn(const std::filesystem::path& path) {
    auto shop = Shop::create(path, standingClock(), smallSteps());
    if (!shop) {
        ADD_FAILURE() << shop.error().message.english();
        std::abort();
    }
    return std::move(shop).value();
}

// ── what the tests do to it ───────────────────────────────────────────────────────────────────────────

inline Result<BlankLotId> receiveLot(Shop& shop, const std::string& name, int units) {
    return shop.act([&](Writer& writer) -> Result<BlankLotId> {
        const auto lot = writer.newId<BlankLotId>();
        writer.connection().run("INSERT INTO lot (id, name) VALUES (?1, ?2)", lot, name);
        writer.connection().run("INSERT INTO move (id, lot_id, units) VALUES (?1, ?2, ?3)",
                                writer.newId<BlankLotId>(), lot, units);
        writer.describe(asItIs("Received " + name));
        writer.concerns(lot);
        return lot;
    });
}

// More pages than one step of a copy takes.
inline Result<Done> receiveManyPages(Shop& shop) {
    return shop.act([](Writer& writer) -> Result<Done> {
        for (int each = 1; each <= 3000; ++each)
            writer.connection().run("INSERT INTO lot (id, name) VALUES (?1, ?2)", each,
                                    std::to_string(each) + std::string(1200, 'y'));
        writer.describe(said("Received a great deal"));
        return Done{};
    });
}

inline Result<Done> moveUnits(Shop& shop, BlankLotId lot, int units, const std::string& title) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        writer.connection().run("INSERT INTO move (id, lot_id, units) VALUES (?1, ?2, ?3)",
                                writer.newId<BlankLotId>(), lot, units);
        writer.describe(asItIs(title));
        writer.concerns(lot);
        return Done{};
    });
}

inline Result<Done> write(Shop& shop, const std::string& title, const std::string& sql, BlankLotId lot) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        writer.connection().run(sql, lot);
        writer.describe(asItIs(title));
        return Done{};
    });
}

inline Result<Done> rename(Shop& shop, BlankLotId lot, const std::string& name) {
    return write(shop, "Renamed to " + name, "UPDATE lot SET name = '" + name + "' WHERE id = ?1", lot);
}

inline EntryId lastEntry(Shop& shop) {
    return shop.recent(1).at(0).id;
}

inline std::int64_t unitsOf(Shop& shop, BlankLotId lot) {
    return shop.connection().number("SELECT COALESCE(SUM(units), 0) FROM move WHERE lot_id = ?1", lot);
}

inline std::int64_t rowsOf(Shop& shop, const std::string& table) {
    return shop.connection().number("SELECT COUNT(*) FROM " + table);
}

inline std::int64_t found(Shop& shop, const std::string& word) {
    return shop.connection().number("SELECT COUNT(*) FROM order_text WHERE order_text MATCH ?1", word);
}

} // namespace holdfast::db::testing

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/export_shop.h"

#include "core/csv/csv.h"
#include "core/facts/order.h"
#include "core/trade/paper_numbers.h"
#include "db/csv/export_tables.h"
#include "db/disk/new_file.h"
#include "db/tables/facts.h"

#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <vector>

namespace holdfast::db {

namespace {

constexpr int kRowsBetweenProgress = 1000;
constexpr mode_t kOwnersFolder = 0700;

std::string twoDigits(std::int64_t number) {
    return (number < 10 ? "0" : "") + std::to_string(number);
}

// Lines on their way into a file, some thousand bytes at a time; what the disk did not take is said at its
// end.
class OutFile {
public:
    explicit OutFile(NewFile& file)
        : m_file(file) {}

    void write(const std::string& line) {
        m_lines += line;
        if (m_lines.size() >= kBytesAtOnce)
            pass();
    }
    Result<Done> end() {
        pass();
        return m_outcome;
    }

private:
    static constexpr std::size_t kBytesAtOnce = 64 << 10;

    void pass() {
        if (m_outcome)
            m_outcome = m_file.write(m_lines);
        m_lines.clear();
    }

    NewFile& m_file;
    std::string m_lines;
    Result<Done> m_outcome = Done{};
};

class Exporting {
public:
    Exporting(Connection& connection, const OffsetAt& offsetAt, const TellProgress& progress)
        : m_connection(connection)
        , m_offsetAt(offsetAt)
        , m_progress(progress)
        , m_currency(loadSettings(connection).currency)
        , m_rowsInAll(static_cast<double>(connection.number(
              "SELECT (SELECT COUNT(*) FROM climate_reading) + (SELECT COUNT(*) FROM journal_entry) + "
              "5 * (SELECT COUNT(*) FROM shop_order) + (SELECT COUNT(*) FROM lot_move) + 1"))) {}

    Result<Done> write(const ExportTable& table, NewFile& into) {
        OutFile file{into};
        file.write(headings(table));
        Query rows = m_connection.query(table.query);
        while (rows.step()) {
            file.write(lineOf(table, rows));
            if (++m_lines % kRowsBetweenProgress == 0 && m_progress &&
                !m_progress(std::min(1.0, static_cast<double>(m_lines) / m_rowsInAll)))
                return plainError(said("The export was stopped. Nothing was left behind."));
        }
        return file.end();
    }

    std::int64_t lines() const { return m_lines; }

private:
    std::string headings(const ExportTable& table) {
        for (const ExportColumn& column : table.columns)
            m_line.plain(std::string{column.heading} +
                         (column.kind == CellKind::Money ? " (" + m_currency.code + ")" : ""));
        return m_line.end();
    }

    std::string lineOf(const ExportTable& table, const Query& row) {
        int at = 0;
        for (const ExportColumn& column : table.columns) {
            if (row.isNull(at))
                m_line.empty();
            else if (column.kind == CellKind::Text)
                m_line.text(row.view(at));
            else
                m_line.plain(cell(column.kind, row, at));
            at += column.kind == CellKind::Garment ? 2 : 1;
        }
        return m_line.end();
    }

    std::string cell(CellKind kind, const Query& row, int at) const {
        switch (kind) {
        case CellKind::Money:
            return plainAmount({row.integer(at)}, m_currency);
        case CellKind::When:
            return spaced(isoLocalMinute(localAt(row.instant(at))));
        case CellKind::Moment:
            return moment(row.instant(at));
        case CellKind::LocalTime:
            return spaced(row.text(at));
        case CellKind::YesNo:
            return row.truth(at) ? "yes" : "no";
        case CellKind::Rgb: {
            std::array<char, 16> text{};
            std::snprintf(text.data(), text.size(), "#%06X",
                          static_cast<unsigned>(row.integer(at) & 0xFFFFFF));
            return text.data();
        }
        case CellKind::Roll:
            return rollLabel(row.integer(at));
        case CellKind::Garment:
            return row.text(at) + "-" + garmentLetter(row.integer(at + 1));
        case CellKind::Plain:
        case CellKind::Text:
            break;
        }
        return row.text(at);
    }

    static std::string spaced(std::string time) {
        std::ranges::replace(time, 'T', ' ');
        return time;
    }

    LocalTime localAt(Instant at) const { return Now{at, m_offsetAt(at)}.local(); }

    std::string moment(Instant at) const {
        const auto offset = std::chrono::duration_cast<Minutes>(m_offsetAt(at)).count();
        const auto ahead = std::abs(offset);
        return isoLocalMinute(localAt(at)) + ":" + twoDigits(at.time_since_epoch().count() % 60) +
               (offset < 0 ? "-" : "+") + twoDigits(ahead / 60) + ":" + twoDigits(ahead % 60);
    }

    Connection& m_connection;
    const OffsetAt& m_offsetAt;
    const TellProgress& m_progress;
    const Currency m_currency;
    const double m_rowsInAll;
    CsvLine m_line;
    std::int64_t m_lines = 0;
};

// Made where it is missing, and gone again where nothing came into it.
class OutFolder {
public:
    explicit OutFolder(const std::filesystem::path& path)
        : m_path(path)
        , m_isMade(::mkdir(path.c_str(), kOwnersFolder) == 0)
        , m_isThere(m_isMade || (errno == EEXIST && std::filesystem::is_directory(path))) {}
    OutFolder(const OutFolder&) = delete;
    OutFolder& operator=(const OutFolder&) = delete;
    ~OutFolder() {
        if (m_isMade)
            ::rmdir(m_path.c_str());
    }

    bool isThere() const { return m_isThere; }

private:
    const std::filesystem::path m_path;
    const bool m_isMade;
    const bool m_isThere;
};

// A place for each file, before the first is written.
Result<std::vector<NewFile>> newFiles(const std::filesystem::path& folder) {
    std::vector<NewFile> files;
    for (const ExportTable& table : exportTables()) {
        auto file = NewFile::begin(folder / table.file);
        if (!file)
            return file.error();
        files.push_back(std::move(file).value());
    }
    return files;
}

} // namespace

Result<Exported> exportShop(Shop& shop, const std::filesystem::path& folder, const OffsetAt& offsetAt,
                            const TellProgress& progress) {
    const OutFolder into{folder};
    if (!into.isThere())
        return plainError(said("The folder {folder} could not be made.", {{"folder", folder.string()}}));
    auto files = newFiles(folder);
    if (!files)
        return files.error();
    auto exported = shop.read([&](Connection& connection) -> Result<Exported> {
        Exporting exporting{connection, offsetAt, progress};
        const auto tables = exportTables();
        for (std::size_t at = 0; at < tables.size(); ++at)
            if (auto written = exporting.write(tables[at], (*files)[at]); !written)
                return written.error();
        return Exported{static_cast<std::int64_t>(tables.size()), exporting.lines()};
    });
    if (!exported)
        return exported;
    if (auto kept = NewFile::keepAll(*files); !kept)
        return kept.error();
    return exported;
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/import_shop.h"

#include "core/csv/csv.h"
#include "core/trade/limits.h"
#include "db/actions/parts.h"
#include "db/actions/shop_actions.h"
#include "db/csv/import_kinds.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <fstream>
#include <utility>

namespace holdfast::db {

namespace {

constexpr std::uintmax_t kMostBytes = 500u << 20;
constexpr std::int64_t kLinesBetweenProgress = 1000;

using Columns = std::map<std::string, std::size_t, std::less<>>;

bool isIn(std::span<const std::string_view> headings, std::string_view heading) {
    return std::ranges::find(headings, heading) != headings.end();
}

std::string listOf(std::span<const std::string_view> headings) {
    std::string list;
    for (const std::string_view heading : headings)
        list.append(list.empty() ? "" : ", ").append(heading);
    return list;
}

// "Cost (GBP)" is "Cost", where that is the shop's currency.
Result<std::string> withoutCurrency(const std::string& heading, const Currency& currency) {
    for (const std::string_view money : {"Cost", "Cost of a metre", "Stall", "Other costs"}) {
        if (!heading.starts_with(std::string{money} + " (") || heading.back() != ')')
            continue;
        const std::string code = heading.substr(money.size() + 2, heading.size() - money.size() - 3);
        if (code != currency.code)
            return fieldError(heading,
                              said("The amounts of this file are in {code}, those of the shop in {shopCode}.",
                                   {{"code", code}, {"shopCode", currency.code}}));
        return std::string{money};
    }
    return heading;
}

Result<Columns> columnsIn(const CsvRecord& head, const Currency& currency) {
    Columns columns;
    for (std::size_t at = 0; at < head.fields.size(); ++at) {
        const auto heading = withoutCurrency(trimmed(head.fields[at]), currency);
        if (!heading)
            return heading.error();
        if (!columns.emplace(*heading, at).second)
            return fieldError(*heading,
                              said("The heading “{heading}” is there twice.", {{"heading", *heading}}));
    }
    return columns;
}

Error noKind() {
    std::string known;
    for (const ImportKind& kind : importKinds())
        known += (known.empty() ? "" : "; ") + std::string{kind.name.english} + ": " + listOf(kind.needed);
    return plainError(
        said("The first line does not say what the file holds. Known are these headings: {known}.",
             {{"known", known}}));
}

Result<const ImportKind*> kindOf(const Columns& columns) {
    for (const std::string_view heading : {"Order", "Garment"})
        if (columns.contains(heading))
            return plainError(said(
                "Orders, and what belongs to them, cannot be read in: an order is taken with its garments, "
                "blanks and money, and not by a line."));
    for (const ImportKind& kind : importKinds())
        if (std::ranges::all_of(kind.needed,
                                [&](std::string_view heading) { return columns.contains(heading); }))
            return &kind;
    return noKind();
}

Result<Done> checkHeadings(const Columns& columns, const ImportKind& kind) {
    for (const auto& [heading, at] : columns)
        if (!isIn(kind.needed, heading) && !isIn(kind.allowed, heading) && !isIn(kind.notRead, heading))
            return fieldError(heading,
                              said("“{heading}” is not a heading of {kind}. Known are: {known}.",
                                   {{"heading", heading},
                                    {"kind", kind.name},
                                    {"known", listOf(kind.needed) + (kind.allowed.empty() ? "" : ", ") +
                                                  listOf(kind.allowed)}}));
    return Done{};
}

Sentence title(const Imported& imported) {
    return said("{number} {kind} read in from a file", {{"number", imported.added}, {"kind", imported.kind}});
}

class Importing {
public:
    Importing(Shop& shop, Writer& writer, const Now& now, const OffsetAt& offsetAt,
              const TellProgress& progress)
        : m_shop(shop)
        , m_work{writer, now, offsetAt, {}, {}, {}, {}, {}, {}}
        , m_progress(progress)
        , m_currency(loadSettings(writer.connection()).currency) {}

    Result<Imported> read(std::string_view text) {
        CsvReader reader{text};
        auto head = reader.next();
        if (!head)
            return head.error();
        if (!*head)
            return plainError(said("The file is empty."));
        const auto columns = columnsIn(**head, m_currency);
        if (!columns)
            return columns.error();
        const auto kind = kindOf(*columns);
        if (!kind)
            return kind.error();
        if (const auto known = checkHeadings(*columns, **kind); !known)
            return known.error();
        m_imported.kind = (*kind)->name;
        if (const auto lines = readLines(reader, **kind, *columns, (*head)->fields.size()); !lines)
            return lines.error();
        if (!writeReadings())
            return stopped();
        if (m_work.settings && m_imported.added > 0)
            if (const auto changed = changeSettings(m_shop, *m_work.settings); !changed)
                return changed.error();
        if (m_imported.added > 0)
            m_work.writer.describe(title(m_imported));
        return m_imported;
    }

private:
    static Error stopped() { return plainError(said("Stopped. Nothing was read in.")); }
    bool mayGoOn(double share) { return !m_progress || m_progress(share); }

    Result<Done> readLines(CsvReader& reader, const ImportKind& kind, const Columns& columns,
                           std::size_t headings) {
        CsvNumbers numbers;
        ImportRow row{columns, numbers, m_currency};
        for (std::int64_t count = 1;; ++count) {
            auto record = reader.next();
            if (!record)
                return record.error();
            if (!*record)
                return Done{};
            if ((*record)->fields.size() != headings)
                return plainError(said("Line {line} has {fields} fields, the headings are {headings}.",
                                       {{"line", (*record)->line},
                                        {"fields", (*record)->fields.size()},
                                        {"headings", headings}}));
            row.hold(std::move(**record));
            const auto was = kind.read(m_work, row);
            if (!was)
                return was.error();
            ++(*was == LineWas::Added   ? m_imported.added
               : *was == LineWas::Known ? m_imported.known
                                        : m_imported.passed);
            if (count % kLinesBetweenProgress == 0 && !mayGoOn(reader.share() / 2))
                return stopped();
        }
    }

    // Without the session's bookkeeping, for there may be a million. False: stopped.
    bool writeReadings() {
        if (m_work.readings.empty())
            return true;
        bool goesOn = true;
        m_work.writer.insertMany([&] {
            InsertedRows rows = readingRows();
            rows.reserve(m_work.readings.size());
            Query insert = readingInsert(m_work.writer);
            for (std::size_t at = 0; at < m_work.readings.size() && goesOn; ++at) {
                const auto& [place, reading] = m_work.readings[at];
                if (!addReading(m_work.writer.connection(), insert, place, reading, rows)) {
                    --m_imported.added;
                    ++m_imported.known;
                }
                if ((at + 1) % kLinesBetweenProgress == 0)
                    goesOn = mayGoOn(0.5 + 0.5 * static_cast<double>(at) /
                                               static_cast<double>(m_work.readings.size()));
            }
            return rows;
        });
        return goesOn && mayGoOn(1.0);
    }

    Shop& m_shop;
    ImportWork m_work;
    const TellProgress& m_progress;
    const Currency m_currency;
    Imported m_imported;
};

} // namespace

Result<Imported> importText(Shop& shop, std::string_view text, const Now& now, const OffsetAt& offsetAt,
                            const TellProgress& progress) {
    return shop.act(
        [&](Writer& writer) { return Importing{shop, writer, now, offsetAt, progress}.read(text); });
}

Result<Imported> importFile(Shop& shop, const std::filesystem::path& path, const Now& now,
                            const OffsetAt& offsetAt, const TellProgress& progress) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(path, error))
        return plainError(said("There is no file {path}.", {{"path", path.string()}}));
    const auto size = std::filesystem::file_size(path, error);
    if (error || size > kMostBytes)
        return plainError(said("{path} is larger than 500 MB. Divide it.", {{"path", path.string()}}));
    std::string text(size, '\0');
    std::ifstream file{path, std::ios::binary};
    if (!file.read(text.data(), static_cast<std::streamsize>(size)))
        return plainError(said("{path} cannot be read.", {{"path", path.string()}}));
    return importText(shop, text, now, offsetAt, progress);
}

} // namespace holdfast::db

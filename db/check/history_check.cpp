// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/unit_words.h"
#include "db/check/check_parts.h"
#include "db/sqlite/connection.h"
#include "db/tables/column_words.h"
#include "db/tables/kept_words.h"
#include "db/tables/row_words.h"

#include <algorithm>
#include <map>

namespace holdfast::db {

namespace {

constexpr std::int64_t kEntriesBetween = 2'000;

// Since two laptops may each have begun a roll of one number, an older file could have two of one number. The
// step that forbade it gave the later one another, without a history entry.
bool wasRenumberedByAStep(Connection& connection, const RowOdds& odds) {
    if (odds.table != "film_roll" || odds.columns != std::vector<std::string>{"number"} || odds.brokenBy)
        return false;
    Query other{connection, "SELECT 1 FROM film_roll WHERE number = ?1 AND id < CAST(?2 AS INTEGER)"};
    bindValue(other, 1, odds.history.front());
    other.bind(2, odds.key);
    return other.step();
}

HistorySums sumsOf(Connection& connection, const std::vector<RecordedTable>& tables, const TellProgress& told,
                   std::vector<Sentence>& unread) {
    HistorySums sums;
    const auto inAll = static_cast<double>(connection.number("SELECT COUNT(*) FROM journal_entry"));
    std::int64_t done = 0;
    Query entries{connection, "SELECT title, changeset, said FROM journal_entry"};
    while (entries.step()) {
        try {
            sums.addEntry(entries.bytes(1));
        } catch (const SqliteFailure& failure) {
            if (!failure.isDamage())
                throw;
            unread.push_back(said("The journal entry “{title}” cannot be read.",
                                  {{"title", asAlone(keptWords(entries, 0, 2).sentence())}}));
        }
        if (++done % kEntriesBetween == 0 && told)
            (void)told(0.7 * static_cast<double>(done) / inAll); // a stop ends the next statement
    }
    for (const RecordedTable& table : tables)
        sums.takeRows(connection, table);
    return sums;
}

} // namespace

HistoryFindings historyFindings(Connection& connection, const TellProgress& told, std::size_t mostGroups) {
    HistoryFindings findings;
    const std::vector<RecordedTable> tables = tablesOfHistory(connection);
    std::vector<RowGroup> odd = sumsOf(connection, tables, told, findings.unread).odd();
    if (odd.empty())
        return findings;
    if (odd.size() > mostGroups) {
        findings.moreGroups = odd.size() - mostGroups;
        odd.resize(mostGroups);
    }
    findings.rows = rowsAtOdds(connection, tables, {odd.begin(), odd.end()});
    std::erase_if(findings.rows, [&](const RowOdds& odds) { return wasRenumberedByAStep(connection, odds); });
    return findings;
}

Sentence words(Connection& connection, const RowOdds& odds) {
    const Sentence row = rowWords(connection, odds.table, odds.key);
    switch (odds.kind) {
    case RowOdds::Kind::Missing:
        return said("{row} is in the history and not in the file.", {{"row", row}});
    case RowOdds::Kind::Extra:
        return said("{row} is in the file, but no entry of the history made it.", {{"row", row}});
    case RowOdds::Kind::Broken:
        return said("{row}: “{title}” refers to it as it never was.",
                    {{"row", row}, {"title", *odds.brokenBy}});
    case RowOdds::Kind::Differs:
        break;
    }
    std::vector<Sentence> differences;
    for (std::size_t at = 0; at < odds.columns.size(); ++at)
        differences.push_back(said("its {column} is {here} and was entered as {history}",
                                   {{"column", columnNamed(odds.columns[at])},
                                    {"here", valueWords(odds.here[at])},
                                    {"history", valueWords(odds.history[at])}}));
    return said("{row}: {differences}.", {{"row", row}, {"differences", std::move(differences)}});
}

void checkHistory(Connection& connection, const TellProgress& told, Findings& findings) {
    const HistoryFindings found = historyFindings(connection, told);
    addNamed(findings, found.unread,
             phrase("And {n} more entry cannot be read.|And {n} more entries cannot be read."));
    std::vector<Sentence> sentences;
    for (const RowOdds& odds : found.rows)
        sentences.push_back(words(connection, odds));
    addNamed(findings, sentences,
             phrase("And {n} more row is not as its history says.|"
                    "And {n} more rows are not as their history says."));
    if (found.moreGroups > 0)
        findings.push_back(said("At least {n} more row is not as its history says.|"
                                "At least {n} more rows are not as their history says.",
                                {{"n", found.moreGroups}}));
}

} // namespace holdfast::db

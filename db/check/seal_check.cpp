// SPDX-License-Identifier: GPL-3.0-or-later
// What each entry says against its seal, and the line against its marks.
#include "db/check/check_parts.h"
#include "db/journal/carried_entry.h"
#include "db/journal/line.h"
#include "db/sqlite/failure.h"

namespace holdfast::db {

namespace {

std::vector<EntryId> allEntries(Connection& connection) {
    std::vector<EntryId> entries;
    Query rows = connection.query("SELECT id FROM journal_entry UNION ALL SELECT id FROM journal_aside");
    while (rows.step())
        entries.push_back(rows.id<EntryId>(0));
    return entries;
}

std::optional<Sentence> whatIsNotAsWritten(Connection& connection, EntryId id) {
    const Numeral number{id.value};
    try {
        const auto entry = readEntry(connection, id);
        const auto seal = writtenContentSeal(connection, id);
        if (entry && seal && contentSealOf(*entry) == *seal)
            return std::nullopt;
        if (entry)
            return said("The journal entry {entry}, “{title}”, is not as it was written.",
                        {{"entry", number}, {"title", asAlone(entry->title.sentence())}});
    } catch (const SqliteFailure& failure) {
        if (!failure.isDamage())
            throw;
    }
    return said("The journal entry {entry} is not as it was written.", {{"entry", number}});
}

} // namespace

void checkSeals(Connection& connection, const TellProgress& told, Findings& findings) {
    const auto entries = allEntries(connection);
    std::vector<Sentence> sentences;
    for (std::size_t at = 0; at < entries.size(); ++at) {
        if (told)
            (void)told(static_cast<double>(at) / static_cast<double>(entries.size())); // a stop ends the next
        if (auto sentence = whatIsNotAsWritten(connection, entries[at]))
            sentences.push_back(std::move(*sentence));
    }
    addNamed(findings, sentences,
             phrase("And {n} more entry is not as it was written.|"
                    "And {n} more entries are not as they were written."));
    if (const std::int64_t lost = connection.number(
            "SELECT COUNT(*) FROM journal_seal WHERE entry_id NOT IN (SELECT id FROM journal_entry) "
            "AND entry_id NOT IN (SELECT id FROM journal_aside)"))
        findings.push_back(said("An entry of the journal is missing, though its seal is there.|"
                                "{n} entries of the journal are missing, though their seals are there.",
                                {{"n", lost}}));
}

void checkMarks(Connection& connection, Findings& findings) {
    PlaceInLine last;
    for (const EntryId id : lineBehind(connection, 0)) {
        const auto seal = writtenSeal(connection, id);
        last = placeBehind(last, seal ? *seal : Hash{});
        if (placeInLine(connection, last.place) != last) {
            findings.push_back(said("The line of entries that the laptops share is not as it was written "
                                    "from place {place} on.",
                                    {{"place", Numeral{last.place}}}));
            return;
        }
    }
}

} // namespace holdfast::db

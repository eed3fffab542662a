// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/merge_entry.h"

#include "db/exchange/give_way.h"
#include "db/exchange/joins_of_forgotten.h"
#include "db/exchange/odds_of_orders.h"
#include "db/exchange/references_twice.h"
#include "db/journal/ledger_faults.h"
#include "db/journal/obstacle.h"
#include "db/journal/recorded_tables.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/merge_rows.h"
#include "db/sqlite/open_references.h"
#include "db/sqlite/savepoint.h"
#include "db/sqlite/session.h"
#include "db/tables/invoices.h"
#include "db/tables/row_words.h"

#include <algorithm>

namespace holdfast::db {

namespace {

const MergeRules& rulesOfTheTrade() {
    static const MergeRules rules{
        {{"shop_order", {"state", "handed_over_at"}},
         {"garment", {"style_id", "size", "colour_id", "lot_id"}},
         {"decal", {"artwork", "wording", "face", "outline", "confirmed_by"}},
         {"decal", {"width_mm", "height_mm"}},
         {"decal", {"cut_roll_id", "cut_at"}},
         {"claim", {"answer", "answered_on"}},
         {"film", {"recipe_c", "dwell_s", "pressure", "peel", "recipe_confirmed_by"}},
         {"fair", {"first_day", "last_day"}},
         {"fair", {"opens_min", "closes_min"}},
         {"other_hours", {"opens", "closes"}},
         {"till_count", {"at", "float_minor", "cash_minor", "counted_minor"}}},
        {{"film_roll", "number", "SELECT MAX(number) + 1 FROM film_roll"},
         {"shop_order", "number",
          "SELECT next_order_number FROM seat_here JOIN seat ON seat.id = seat_id "
          "WHERE next_order_number <= last_order_number"}}};
    return rules;
}

// Steps at the press follow one another: done in part they would lead nowhere.
bool isOfOnePiece(const RowDifference& difference) {
    return difference.table == "press_step" && difference.kind != RowDifference::Kind::Renumbered;
}

// One after the other, each once.
Sentence joined(const std::vector<Sentence>& sentences) {
    Sentence words;
    for (const Sentence& sentence : sentences)
        if (words.empty())
            words = sentence;
        else if (words.english().find(sentence.english()) == std::string::npos)
            words = oneAfterTheOther(std::move(words), sentence);
    return words;
}

// What it brought an order into is said with it, once.
CarriedEntry withOdds(Connection& connection, CarriedEntry entry, OddsOfOrders& odds) {
    std::vector<Sentence> sentences = odds.brought();
    for (Sentence& sentence : referencesTakenTwice(connection, entry.changeset))
        sentences.push_back(std::move(sentence));
    for (const Sentence& sentence : sentences)
        entry.words = KeptWords::of(joined({entry.words.sentence(), sentence}));
    return entry;
}

} // namespace

EntryMerger::EntryMerger(Connection& connection)
    : m_connection(connection)
    , m_mayBeCarried(connection)
    , m_recordedTables(recordedTables(connection)) {}

CarriedEntry EntryMerger::merge(CarriedEntry entry, bool mindsLedgers) {
    m_mayBeCarried.requireOf(entry);
    for (const TableChanges& changes : tablesOf(entry.changeset))
        m_touched.insert(changes.table);
    std::optional<Sentence> why = whyItCannotBe(entry);
    if (const auto invoice = invoiceLeftAlone(m_connection, entry.changeset); invoice && !why)
        why = said("Invoice {invoice} was made of its order, and an invoice stays.", {{"invoice", *invoice}});
    if (!why)
        why = whyNotJoined(m_connection, entry.changeset);
    if (!why) {
        OddsOfOrders odds{m_connection, entry.changeset};
        if (appliedAsItIs(entry, mindsLedgers))
            return withOdds(m_connection, std::move(entry), odds);
        Outcome outcome = appliedAsFarAsItGoes(entry, mindsLedgers);
        const Sentence words = joined(outcome.words);
        if (!outcome.isAside) {
            entry.changeset = std::move(outcome.changed);
            entry.words = KeptWords::of(joined({entry.words.sentence(), words}));
            return withOdds(m_connection, std::move(entry), odds);
        }
        why = words;
    }
    entry.isAside = true;
    entry.words = KeptWords::of(*why);
    return entry;
}

// An undo shares the fate of what it undoes.
std::optional<Sentence> EntryMerger::whyItCannotBe(const CarriedEntry& entry) {
    if (!entry.undoes)
        return std::nullopt;
    Query undone = m_connection.query(
        "SELECT undone_by IS NOT NULL, title, said FROM journal_entry WHERE id = ?1", *entry.undoes);
    if (!undone.step())
        return said("What it undoes was not done either.");
    if (!undone.truth(0))
        return std::nullopt;
    return said("“{title}” had been undone already.",
                {{"title", asAlone(keptWords(undone, 1, 2).sentence())}});
}

// Puts back what was undone: as in the window, with another blank where its own went to a garment since.
bool EntryMerger::isRedo(const CarriedEntry& entry) {
    Query undone =
        m_connection.query("SELECT undoes IS NOT NULL FROM journal_entry WHERE id = ?1", *entry.undoes);
    return undone.step() && undone.truth(0);
}

bool EntryMerger::appliedAsItIs(const CarriedEntry& entry, bool mindsLedgers) {
    Savepoint whole{m_connection};
    if (applyChangeset(m_connection, entry.changeset) || pressClash(m_connection, entry.changeset) ||
        isKeptByCancelled(m_connection, entry.changeset) ||
        (mindsLedgers && !ledgerFaults(m_connection).empty()))
        return false;
    whole.keep();
    return true;
}

EntryMerger::Outcome EntryMerger::appliedAsFarAsItGoes(const CarriedEntry& entry, bool mindsLedgers) {
    const auto aside = [](std::vector<Sentence> words) { return Outcome{{}, std::move(words), true}; };
    Savepoint part{m_connection};
    Session session{m_connection, m_recordedTables};
    deferReferences(m_connection);
    const auto differences = mergeRows(m_connection, entry.changeset, rulesOfTheTrade());
    std::vector<Sentence> words;
    for (const RowDifference& difference : differences) {
        words.push_back(differenceWords(m_connection, difference, entry.seat));
        if (difference.table == "shop_order" && difference.kind == RowDifference::Kind::Renumbered)
            m_connection.run("UPDATE seat_here SET next_order_number = next_order_number + 1");
    }
    if (const auto clash = pressClash(m_connection, entry.changeset))
        return aside({*clash});
    // As in the window: what cannot be undone whole is not undone.
    if ((entry.undoes && !differences.empty()) || std::ranges::any_of(differences, isOfOnePiece))
        return aside(std::move(words));
    if (hasOpenReferences(m_connection))
        return aside({whatIsGone(entry)});
    for (Sentence& sentence : giveBackOfCancelled(m_connection, entry.changeset))
        words.push_back(std::move(sentence));
    if (mindsLedgers && !ledgerFaults(m_connection).empty()) {
        if (entry.undoes && !isRedo(entry))
            return aside(ledgerFaults(m_connection));
        for (Sentence& sentence : mendLedgers(m_connection, entry.changeset, entry.at))
            words.push_back(std::move(sentence));
        if (auto faults = ledgerFaults(m_connection); !faults.empty())
            return aside(std::move(faults));
    }
    Changeset changed = session.changeset();
    if (changed.empty()) {
        words.push_back(differences.empty() ? said("The same had been done on another laptop.")
                                            : said("Nothing is left of it to be done."));
        return aside(std::move(words));
    }
    for (const TableChanges& changes : tablesOf(changed))
        m_touched.insert(changes.table);
    part.keep();
    return {std::move(changed), std::move(words), false};
}

// Which entry took away a row that this one needs.
Sentence EntryMerger::whatIsGone(const CarriedEntry& entry) {
    const auto dangling = danglingRow(m_connection, entry.changeset);
    if (!dangling)
        return said("What it refers to was deleted.");
    const Sentence row = rowWords(m_connection, dangling->parentTable, dangling->parentKey);
    const auto whose = whoseDoing(m_connection, dangling->parentTable, dangling->parentKey, entry.seat);
    return whose ? said("It needs {row}, which was deleted: {other}.", {{"row", row}, {"other", *whose}})
                 : said("It needs {row}, which was deleted.", {{"row", row}});
}

} // namespace holdfast::db

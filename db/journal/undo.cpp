// SPDX-License-Identifier: GPL-3.0-or-later
// Shop::undo: an entry's inverse applied as an action of its own.
#include "core/trade/assertion.h"
#include "db/journal/ledger_faults.h"
#include "db/journal/obstacle.h"
#include "db/journal/recorded_form.h"
#include "db/journal/recorded_tables.h"
#include "db/journal/shop.h"
#include "db/journal/undo_words.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/foreign_keys.h"
#include "db/sqlite/stopping.h"
#include "db/tables/invoices.h"
#include "db/tables/kept_words.h"

#include <algorithm>

namespace holdfast::db {

namespace {

struct Recorded {
    Sentence title;
    bool isUndone;
    Changeset changeset;
};

std::optional<Recorded> recorded(Connection& connection, EntryId entry) {
    Query found = connection.query(
        "SELECT title, undone_by IS NOT NULL, changeset, said FROM journal_entry WHERE id = ?1", entry);
    if (!found.step())
        return std::nullopt;
    const auto bytes = found.bytes(2);
    return Recorded{keptWords(found, 0, 3).sentence(), found.truth(1), Changeset(bytes.begin(), bytes.end())};
}

// "“Took order 426” cannot be redone. …"
Error cannot(const Sentence& title, Sentence why) {
    const Value done = asAlone(withoutUndo(title));
    return plainError(oneAfterTheOther(isTitleOfUndo(title)
                                           ? said("“{title}” cannot be redone.", {{"title", done}})
                                           : said("“{title}” cannot be undone.", {{"title", done}}),
                                       std::move(why)));
}

Error inTheWay(const Sentence& title, const std::optional<Sentence>& obstacle) {
    return cannot(title, obstacle ? said("“{title}” came later and is in the way. Undo that first.",
                                         {{"title", asAlone(*obstacle)}})
                                  : said("Something entered later is in the way."));
}

std::optional<Sentence> whyForGood(ChangesetView changeset) {
    if (!isForGood(changeset))
        return std::nullopt;
    const auto tables = tablesOf(changeset);
    return std::ranges::find(tables, "invoice", &TableChanges::table) != tables.end()
               ? said("An invoice stays as it was made. Make a credit note.")
               : said("Who was forgotten stays forgotten.");
}

Error isUndoneAlready(const Sentence& title) {
    const Value done = asAlone(withoutUndo(title));
    return plainError(isTitleOfUndo(title) ? said("“{title}” has been redone already.", {{"title", done}})
                                           : said("“{title}” has been undone already.", {{"title", done}}));
}

// Rows written so far of those to be written.
std::function<bool()> asked(Connection& connection, ChangesetView changeset, const TellProgress& progress) {
    if (!progress)
        return {};
    const auto rows = static_cast<double>(std::max<std::int64_t>(1, changeCount(changeset)));
    return [&connection, &progress, rows, before = connection.changesInAll()] {
        const auto written = static_cast<double>(connection.changesInAll() - before);
        return progress(std::min(1.0, written / rows));
    };
}

} // namespace

Result<EntryId> Shop::undo(EntryId entry, const TellProgress& progress, const GiveWay& giveWay) {
    HOLDFAST_ASSERT(m_underWay == nullptr && "nothing is undone inside an action");
    if (isReadOnly())
        return readOnlyError();
    ChangedTables touched;
    auto outcome = undone(entry, progress, giveWay, touched);
    tell(touched);
    return outcome;
}

Result<EntryId> Shop::undone(EntryId entry, const TellProgress& progress, const GiveWay& giveWay,
                             ChangedTables& touched) {
    try {
        const auto original = recorded(connection(), entry);
        if (!original)
            return plainError(said("The history has no such entry."));
        if (original->isUndone)
            return isUndoneAlready(original->title);
        if (!RecordedForm{connection()}.fits(tablesOf(original->changeset)))
            return cannot(original->title, said("It was done with an older form of the shop file."));

        if (const auto why = whyForGood(original->changeset))
            return cannot(original->title, *why);

        const Changeset inverse = inverseOf(original->changeset);
        if (const auto invoice = invoiceLeftAlone(connection(), inverse))
            return cannot(
                original->title,
                said("Invoice {invoice} was made of it, and an invoice stays. Cancel the order, and "
                     "make a credit note.",
                     {{"invoice", *invoice}}));
        const ForeignKeysOff unchecked{connection()};
        const Stopping stopping{connection(), asked(connection(), inverse, progress)};
        Action action{*this};
        if (const auto conflict = applyChangeset(connection(), inverse))
            return inTheWay(original->title, obstacleAfter(connection(), entry, *conflict));
        if (const auto dangling = danglingRow(connection(), inverse))
            return inTheWay(original->title, obstacleAfter(connection(), entry, *dangling));
        if (giveWay)
            giveWay(action.writer());
        const auto faults = giveWay ? ledgerFaults(connection()) : ledgerFaults(connection(), inverse);
        if (!faults.empty())
            return cannot(original->title, faults.front());

        action.writer().describe(titleOfUndo(original->title));
        action.writer().concernsTheSameAs(entry);
        const auto written = action.keep(entry);
        if (!written)
            return cannot(original->title, said("It left nothing to undo."));
        touched = action.touched();
        return *written;
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

} // namespace holdfast::db

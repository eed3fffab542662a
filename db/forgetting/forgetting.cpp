// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/forgetting/forgetting.h"

#include "db/forgetting/personal_columns.h"
#include "db/journal/shop.h"
#include "db/journal/undo_words.h"
#include "db/sqlite/changeset_values.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/failure.h"

#include <algorithm>
#include <vector>

namespace holdfast::db {

namespace {

// Rows that belong to an order by way of its garments, and the column that says to which.
struct Belongs {
    std::string_view table;
    std::string_view of;
    std::size_t column;
};
constexpr std::array kPartsOf{
    Belongs{"garment", "shop_order", 1}, Belongs{"decal", "garment", 1},
    Belongs{"claim", "garment", 1},      Belongs{"waiver", "garment", 1},
    Belongs{"spoil", "garment", 1},      Belongs{"order_reference", "shop_order", 1},
};

constexpr Phrase kRemarkForgotten = phrase("What gave way is no longer known: the customer was forgotten.");
// In notes: a shorter one would be found in other words.
constexpr std::size_t kShortestName = 3;

constexpr std::string_view kCustomerIsNow = "Customer is now ";

std::vector<EntryId> entriesIn(Query rows) {
    std::vector<EntryId> entries;
    while (rows.step())
        entries.push_back(rows.id<EntryId>(0));
    return entries;
}

std::vector<EntryId> allEntries(Connection& connection) {
    return entriesIn(
        connection.query("SELECT id FROM journal_entry UNION ALL SELECT id FROM journal_aside ORDER BY id"));
}

// Whose words say something about what another entry did, by its title.
std::vector<EntryId> entriesWhoseWordsHold(Connection& connection, const std::string& title) {
    return entriesIn(connection.query("SELECT entry_id FROM journal_remark WHERE instr(words, ?1) > 0 "
                                      "UNION ALL SELECT id FROM journal_aside WHERE instr(why, ?1) > 0",
                                      title));
}

// Titles name what was done and to which garment, and then, after a colon, in a person's words.
std::string impersonal(const std::string& title) {
    const std::string done = withoutUndo(asItIs(title)).english();
    const std::string undo = title.substr(0, title.size() - done.size());
    if (done.starts_with(kCustomerIsNow))
        return undo + std::string{kCustomerIsNow} + std::string{kForgottenName};
    const std::size_t colon = done.find(": ");
    return colon == std::string::npos ? title
                                      : undo + done.substr(0, colon + 2) + std::string{kForgottenName};
}

// What may be written anywhere else; a note is written once.
bool isNamed(const PersonalColumn& personal) {
    return personal.table == "customer" && personal.column != "note";
}

std::string quotedName(std::string_view name) {
    return "\"" + std::string{name} + "\"";
}

} // namespace

Forgetting::Forgetting(Connection& connection, ForgottenPeople people)
    : m_connection(connection)
    , m_people(std::move(people)) {
    for (std::size_t at = 0; at < kPersonalColumns.size(); ++at) {
        const PersonalColumn& personal = kPersonalColumns[at];
        Query column = m_connection.query("SELECT cid FROM pragma_table_info(?1) WHERE name = ?2",
                                          personal.table, personal.column);
        if (column.step())
            m_columns[{std::string{personal.table}, static_cast<std::size_t>(column.integer(0))}] = at;
    }
    m_rows["customer"] = m_people.customers;
    m_rows["shop_order"] = m_people.orders;
    learnRows();
}

void Forgetting::learnRows() {
    for (const Belongs& belongs : kPartsOf) {
        Query column = m_connection.query("SELECT name FROM pragma_table_info(?1) WHERE cid = ?2",
                                          belongs.table, belongs.column);
        if (!column.step())
            continue;
        for (const std::int64_t owner : std::set<std::int64_t>{m_rows[std::string{belongs.of}]}) {
            Query rows = m_connection.query("SELECT id FROM " + quotedName(belongs.table) + " WHERE " +
                                                quotedName(column.text(0)) + " = ?1",
                                            owner);
            while (rows.step())
                m_rows[std::string{belongs.table}].insert(rows.integer(0));
        }
    }
    Query entries = m_connection.query("SELECT id, changeset FROM journal_entry UNION ALL "
                                       "SELECT id, changeset FROM journal_aside ORDER BY id");
    while (entries.step())
        learnFrom(entries.bytes(1));
}

void Forgetting::learnFrom(ChangesetView changeset) {
    // Garments before what belongs to them, in whatever order the changeset has its tables.
    for (const bool isForGarments : {true, false})
        forEachValue(changeset, [&](const ValueChange& change) {
            const auto belongs = std::ranges::find(kPartsOf, change.table, &Belongs::table);
            if (belongs == kPartsOf.end() || (change.table == "garment") != isForGarments ||
                change.kind == ChangeKind::Update)
                return;
            const auto row = change.keyed();
            const auto owner = integerIn(row[belongs->column]);
            if (const auto id = integerIn(row.front());
                id && owner && m_rows[std::string{belongs->of}].contains(*owner))
                m_rows[std::string{belongs->table}].insert(*id);
        });
}

void Forgetting::forgetHere(const std::function<bool(double)>& goOn) {
    forgetInRows();
    forgetInJournal(goOn);
    forgetInNotes();
    // The search keeps the words of rows that are gone until its parts are merged.
    m_connection.run("INSERT INTO order_text (order_text) VALUES ('optimize')");
}

void Forgetting::forgetInRows() {
    for (const PersonalColumn& personal : kPersonalColumns)
        for (const std::int64_t id : m_rows[std::string{personal.table}]) {
            const std::string column = quotedName(personal.column);
            Query before = m_connection.query("SELECT " + column + " FROM " + quotedName(personal.table) +
                                                  " WHERE id = ?1 AND " + column + " IS NOT NULL",
                                              id);
            if (!before.step())
                continue;
            if (const std::string text = before.text(0);
                isNamed(personal) && text.size() >= kShortestName && text != kForgottenName)
                m_texts.insert(text);
            before.reset();
            m_connection.run("UPDATE " + quotedName(personal.table) + " SET " + column +
                                 " = ?2 WHERE id = ?1",
                             id, personal.instead);
        }
}

void Forgetting::forgetInJournal(const std::function<bool(double)>& goOn) {
    const auto entries = allEntries(m_connection);
    std::map<std::string, std::string> retitled;
    for (std::size_t at = 0; at < entries.size(); ++at) {
        if (goOn && !goOn(static_cast<double>(at) / static_cast<double>(entries.size())))
            throw SqliteFailure::inWords(said("Stopped. Nobody was forgotten."));
        CarriedEntry entry = *readEntry(m_connection, entries[at]);
        const std::string title = entry.title.english;
        if (!forgetIn(entry))
            continue;
        rewrite(entry);
        if (entry.title.english != title)
            retitled[title] = entry.title.english;
    }
    for (const auto& [before, after] : retitled)
        for (const EntryId id : entriesWhoseWordsHold(m_connection, before)) {
            CarriedEntry entry = *readEntry(m_connection, id);
            std::string words = entry.words.english;
            words.replace(words.find(before), before.size(), after);
            entry.words = {std::move(words), {}};
            rewrite(entry);
        }
}

void Forgetting::rewrite(CarriedEntry& entry) {
    entry.sealedAs = writtenSeal(m_connection, entry.id);
    rewriteEntry(m_connection, entry);
}

void Forgetting::forgetInNotes() {
    for (const std::string& text : m_texts)
        m_connection.run("UPDATE seat_note SET text = replace(text, ?1, ?2) WHERE key <> ?3", text,
                         kForgottenName, kNoteOfAnOrderToCome);
}

bool Forgetting::forgetIn(CarriedEntry& entry) {
    learnFrom(entry.changeset);
    bool isForgotten = false;
    Changeset changeset =
        withOtherValues(entry.changeset,
                        [&](const ValueChange& change, std::size_t column,
                            ValueBytes value) -> std::optional<std::vector<std::byte>> {
                            if (isNothing(value) || isNull(value) || !isTheirs(change.table, change))
                                return std::nullopt;
                            const auto personal = m_columns.find({std::string{change.table}, column});
                            if (personal == m_columns.end())
                                return std::nullopt;
                            const auto instead = kPersonalColumns[personal->second].instead;
                            std::vector<std::byte> other = instead ? textValue(*instead) : nullValue();
                            if (std::ranges::equal(other, value))
                                return std::nullopt;
                            isForgotten = true;
                            return other;
                        });
    if (isForgotten)
        entry.changeset = std::move(changeset);
    if (isForgotten || isAbout(entry)) {
        const std::string title = impersonal(entry.title.english);
        const KeptWords words = entry.words.empty() ? KeptWords{} : KeptWords::of(kRemarkForgotten);
        if (entry.title.english != title) {
            entry.title = {title, {}}; // the sentence has the name among its values
            isForgotten = true;
        }
        if (entry.words != words) {
            entry.words = words;
            isForgotten = true;
        }
    }
    if (isForgotten)
        entry.salt = {};
    return isForgotten;
}

bool Forgetting::isTheirs(std::string_view table, const ValueChange& change) const {
    const auto rows = m_rows.find(table);
    if (rows == m_rows.end())
        return false;
    const auto id = integerIn(change.keyed().front());
    return id && rows->second.contains(*id);
}

bool Forgetting::isAbout(const CarriedEntry& entry) const {
    return std::ranges::any_of(entry.subjects, [this](const auto& subject) {
        return isTheirSubject(subject.first, subject.second);
    });
}

bool Forgetting::isTheirSubject(const std::string& kind, std::int64_t id) const {
    const auto rows = m_rows.find(kind == "order" ? "shop_order" : kind);
    return rows != m_rows.end() && rows->second.contains(id);
}

} // namespace holdfast::db

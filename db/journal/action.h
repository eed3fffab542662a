#pragma once
// One action on the shop file from BEGIN to COMMIT. Shop::act and Shop::undo use it; nobody else does.
//
// While it lives the file may be written to and a session records the tables of the trade. Unless keep()
// succeeds, everything is rolled back when it ends.

#include "db/journal/writer.h"
#include "db/sqlite/session.h"

#include <optional>
#include <set>
#include <string>

namespace holdfast::db {

class Action {
public:
    // Throws SqliteFailure where the file cannot be written to now.
    // REQUIRES: no other action is under way.
    explicit Action(Shop& shop);
    Action(const Action&) = delete;
    Action& operator=(const Action&) = delete;
    ~Action();

    Writer& writer() { return m_writer; }

    // Writes the journal entry and commits. An action that changed nothing leaves no entry. Throws
    // SqliteFailure. `undoes` is the entry that this one takes back.
    std::optional<EntryId> keep(std::optional<EntryId> undoes = std::nullopt);

    // The tables whose rows it changed; known after keep().
    const std::set<std::string>& touched() const { return m_touched; }

private:
    void writeEntry(EntryId entry, const Changeset& changeset, std::optional<EntryId> undoes);

    Shop& m_shop;
    Writer m_writer;
    std::optional<Session> m_session;
    std::set<std::string> m_touched;
    bool m_kept = false;
};

} // namespace holdfast::db

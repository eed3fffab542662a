// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One action on the shop file from BEGIN to COMMIT. Shop::act and Shop::undo use it; nobody else does. An
// action that is begun inside it is a part of it: one transaction, one entry, and none of it where a part
// fails.
//
// While it lives the file may be written to and a session records the tables of the trade. Unless keep()
// succeeds, everything is rolled back when it ends.

#include "core/trade/ids.h"
#include "core/trade/result.h"
#include "db/journal/writer.h"
#include "db/sqlite/session.h"
#include "db/sqlite/transaction.h"

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

    Writer& writer() { return m_writer; }

    void failPart(const Error& error) { m_failedPart = error; }
    const std::optional<Error>& failedPart() const { return m_failedPart; }

    // Writes the journal entry and commits. An action that changed nothing leaves no entry. Throws
    // SqliteFailure. `undoes` is the entry that this one undoes.
    std::optional<EntryId> keep(std::optional<EntryId> undoes = std::nullopt);

    // The tables whose rows it changed; known after keep().
    const std::set<std::string>& touched() const { return m_touched; }

private:
    // Allows writing from before BEGIN until after COMMIT or ROLLBACK.
    class Permit {
    public:
        Permit(Shop& shop, Action& action);
        Permit(const Permit&) = delete;
        Permit& operator=(const Permit&) = delete;
        ~Permit();

    private:
        Shop& m_shop;
    };

    void writeEntry(EntryId id, Changeset changeset, std::optional<EntryId> undoes);

    Shop& m_shop;
    Permit m_permit;
    Transaction m_transaction;
    Session m_session;
    Writer m_writer;
    std::optional<Error> m_failedPart;
    std::set<std::string> m_touched;
};

} // namespace holdfast::db

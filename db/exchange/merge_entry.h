// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Applies one entry of another laptop, or one of this laptop's over what the line brought, to a shop that has
// gone on.

#include "db/exchange/may_be_carried.h"
#include "db/journal/carried_entry.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

class EntryMerger {
public:
    // REQUIRES: a transaction in which writing is allowed, for as long as it lives.
    explicit EntryMerger(Connection& connection);

    // Applies the entry and answers it as the journal is to keep it: with what it really changed and, where
    // that is not what it says, why; or aside, with nothing applied and why. The journal itself is not
    // written to. `mindsLedgers`: the entry may leave none below zero. Looking takes some milliseconds in a
    // large shop, so whoever merges many looks once at the end, and does it again, minding, only where there
    // is need. Throws what no action makes (may_be_carried.h).
    CarriedEntry merge(CarriedEntry entry, bool mindsLedgers);

    // The tables written to since it was made.
    const std::set<std::string>& touched() const { return m_touched; }

private:
    struct Outcome {
        Changeset changed;
        std::vector<Sentence> words;
        bool isAside = false;
    };

    bool appliedAsItIs(const CarriedEntry& entry, bool mindsLedgers);
    Outcome appliedAsFarAsItGoes(const CarriedEntry& entry, bool mindsLedgers);
    std::optional<Sentence> whyItCannotBe(const CarriedEntry& entry);
    // REQUIRES: that the entry undoes one.
    bool isRedo(const CarriedEntry& entry);
    Sentence whatIsGone(const CarriedEntry& entry);

    Connection& m_connection;
    MayBeCarried m_mayBeCarried;
    std::vector<std::string> m_recordedTables;
    std::set<std::string> m_touched;
};

} // namespace holdfast::db

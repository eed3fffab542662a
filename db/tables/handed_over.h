// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The garments that were handed over in a span, as figures compare them. Throws SqliteFailure.

#include "core/quality/figures.h"
#include "db/sqlite/connection.h"
#include "db/tables/garments_in_turn.h"
#include "db/tables/unread_facts.h"

#include <string_view>
#include <unordered_map>
#include <vector>

namespace holdfast::db {

// Takes one garment after the other; of what they are made of, only counts are kept.
class HandedOverCounts {
public:
    // Of those handed over from then until now. What cannot be read of their claims is noted in `unread`.
    HandedOverCounts(Connection& connection, Instant from, const Now& now, UnreadFacts& unread);

    void add(const GarmentsInTurn& garment);

    const std::vector<HandedOver>& garments() const { return m_garments; }
    const FaultCounts& counts() const { return m_counts; }

private:
    // Numbers of names, found by the id of what has the name.
    template <class AnyId>
    using NumbersById = std::unordered_map<AnyId, std::size_t>;
    using Numbers = std::vector<std::size_t>;

    template <class AnyId>
    void name(NumbersById<AnyId>& numbers, FaultsBy by, std::string_view sql);
    void readNames();
    void readFaults(UnreadFacts& unread);
    void count(FaultsBy by, const Numbers& numbers, bool cameBack);

    Connection& m_connection;
    Instant m_from;
    Now m_now;
    NumbersById<FilmId> m_films;
    NumbersById<RollId> m_rolls;
    NumbersById<PressId> m_presses;
    NumbersById<BlankStyleId> m_styles;
    NumbersById<BlankLotId> m_lots;
    std::size_t m_notWashed = 0;
    std::unordered_map<GarmentId, FirstFault> m_faults;
    std::vector<HandedOver> m_garments;
    FaultCounts m_counts;
};

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/handed_over.h"

#include "core/facts/film_roll.h"
#include "db/tables/fact_row.h"

#include <algorithm>

namespace holdfast::db {

namespace {

constexpr const char* kNotWashed = "not washed";

// The number of a thing's name, once; nothing of what is not there.
template <class NumbersById, class AnyId>
void addOnceTo(std::vector<std::size_t>& numbers, const NumbersById& byId, AnyId id) {
    const auto found = byId.find(id);
    if (found != byId.end() && std::ranges::find(numbers, found->second) == numbers.end())
        numbers.push_back(found->second);
}

} // namespace

HandedOverCounts::HandedOverCounts(Connection& connection, Instant from, const Now& now, UnreadFacts& unread)
    : m_connection(connection)
    , m_from(from)
    , m_now(now) {
    readNames();
    readFaults(unread);
}

void HandedOverCounts::add(const GarmentsInTurn& garment) {
    const Query& row = garment.row();
    if (row.isNull(9) || row.instant(9) < m_from || row.instant(9) > m_now.instant)
        return;
    const auto style = m_styles.find(row.id<BlankStyleId>(3));
    if (style == m_styles.end())
        return;
    HandedOver& handedOver = m_garments.emplace_back();
    handedOver.on = dateOf(m_now.toLocal(row.instant(9)));
    if (const auto fault = m_faults.find(garment.id()); fault != m_faults.end())
        handedOver.fault = fault->second;
    const bool cameBack = handedOver.fault.has_value();

    Numbers films, rolls, presses;
    for (const DecalInTurn& decal : garment.decals()) {
        addOnceTo(films, m_films, decal.film);
        addOnceTo(rolls, m_rolls, decal.cutFrom);
    }
    if (garment.card())
        for (const PressId press : garment.card()->pressIds())
            addOnceTo(presses, m_presses, press);
    count(FaultsBy::Film, films, cameBack);
    count(FaultsBy::Roll, rolls, cameBack);
    count(FaultsBy::Press, presses, cameBack);
    m_counts.count(FaultsBy::Style, style->second, cameBack);
    const auto lot = m_lots.find(row.id<BlankLotId>(6));
    m_counts.count(FaultsBy::Washing, lot == m_lots.end() ? m_notWashed : lot->second, cameBack);
}

void HandedOverCounts::count(FaultsBy by, const Numbers& numbers, bool cameBack) {
    for (const std::size_t number : numbers)
        m_counts.count(by, number, cameBack);
}

template <class AnyId>
void HandedOverCounts::name(NumbersById<AnyId>& numbers, FaultsBy by, std::string_view sql) {
    Query rows{m_connection, sql};
    while (rows.step())
        numbers[rows.id<AnyId>(0)] = m_counts.numberOf(by, rows.text(1));
}

void HandedOverCounts::readNames() {
    name(m_films, FaultsBy::Film, "SELECT id, finish || ', ' || shade FROM film");
    name(m_styles, FaultsBy::Style, "SELECT id, name FROM blank_style");
    name(m_presses, FaultsBy::Press, "SELECT id, name FROM press");
    name(m_lots, FaultsBy::Washing,
         "SELECT blank_lot.id, CASE WHEN softener OR dryer_sheet THEN 'washed with softener' ELSE 'washed' "
         "END "
         "FROM blank_lot JOIN wash_load ON wash_load.id = last_load_id");
    m_notWashed = m_counts.numberOf(FaultsBy::Washing, kNotWashed);
    Query rolls{m_connection, "SELECT id, number FROM film_roll"};
    while (rolls.step()) {
        FilmRoll roll;
        roll.number = static_cast<int>(rolls.integer(1));
        m_rolls[rolls.id<RollId>(0)] = m_counts.numberOf(FaultsBy::Roll, roll.label());
    }
}

// The latest reported first, so that the first reported is the one that stays.
void HandedOverCounts::readFaults(UnreadFacts& unread) {
    Query rows = m_connection.query("SELECT claim.id, garment_id, told_on, fault FROM claim "
                                    "JOIN garment ON garment.id = garment_id "
                                    "WHERE garment.handed_over_at >= ?1 ORDER BY told_on DESC",
                                    m_from);
    readFacts(rows, unread, "claim", [&](const FactRow& row) {
        const auto fault = row.choice<Fault>(3);
        const LocalDate toldOn = row.date(2);
        if (isOfPressing(fault))
            m_faults[row.id<GarmentId>(1)] = FirstFault{toldOn, fault};
    });
}

} // namespace holdfast::db

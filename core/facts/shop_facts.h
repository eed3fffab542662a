// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is known of a shop at one moment: the facts, before any rule looks at them. Built by db/tables from
// the shop file (orders that are open, or those asked for; all stock, films, presses and settings), or by
// hand in tests. Never changed once built; newer facts are loaded into a new one.

#include "core/facts/blank_lot.h"
#include "core/facts/blank_style.h"
#include "core/facts/cutting_history.h"
#include "core/facts/fair.h"
#include "core/facts/film.h"
#include "core/facts/film_roll.h"
#include "core/facts/order.h"
#include "core/facts/press.h"
#include "core/facts/roster.h"
#include "core/facts/settings.h"
#include "core/facts/unread_row.h"
#include "core/facts/waiver.h"

#include <span>
#include <vector>

namespace holdfast {

struct ShopFacts {
    ShopSettings settings;

    Roster<Customer> customers;
    Roster<Order> orders;
    Roster<Garment> garments;
    std::vector<StepRecord> steps; // by garment, then attempt, then order of work
    std::vector<Waiver> waivers;   // by garment
    std::vector<Spoil> spoils;     // by garment

    Roster<BlankStyle> styles;
    Roster<BlankLot> lots;  // that have units left, or are kept for a garment here
    Roster<WashLoad> loads; // of those lots

    Roster<Film> films;
    Roster<FilmRoll> rolls; // on the shelf or put away, or cut for a garment here
    Roster<StoragePlace> places;

    Roster<Press> presses;
    std::vector<PressCheck> pressChecks; // the last of each press

    Roster<Fair> fairs;
    CuttingHistory cutting;

    std::vector<UnreadRow> unread; // what is not above, though the file has it

    // Garments of an order, by position.
    std::vector<const Garment*> garmentsOf(OrderId order) const;
    // The steps of a garment's present attempt.
    std::span<const StepRecord> stepsOf(const Garment& garment) const;
    std::span<const Waiver> waiversOf(GarmentId garment) const;
    const PressCheck* lastCheck(PressId press) const;
    const WashLoad* lastLoadOf(const BlankLot& lot) const;
    const Order& orderOf(const Garment& garment) const { return orders.at(garment.order); }
    const BlankStyle& styleOf(const Garment& garment) const { return styles.at(garment.style); }
    std::string labelOf(const Garment& garment) const { return garmentLabel(orderOf(garment), garment); }

    // Units of a lot, less those kept for garments that have not taken theirs yet.
    std::int64_t freeUnits(const BlankLot& lot) const;
};

} // namespace holdfast

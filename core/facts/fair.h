// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A fair where the shop has a stall, for one day or some days in a row.
//
// An order belongs to a fair by name and day: it was taken at the place of this name (Order::takenAtPlace) on
// one of these days. Orders keep the name as text, so that one taken at a fair that is in no list is one of
// its own. A fair that comes again next year is another one of the same name.

#include "core/facts/settings.h"
#include "core/trade/ids.h"

#include <span>

namespace holdfast {

struct Fair {
    FairId id;
    std::string name;
    LocalDate firstDay{};
    LocalDate lastDay{};
    OpeningHours hours; // of the stall, on each day
    Money stallCost;
    Money otherCosts;              // the way there, a bed, a helper
    std::optional<Minutes> worked; // by everybody together; none: as long as the stall is open
    std::string note;

    bool operator==(const Fair&) const = default;

    std::int64_t days() const { return (lastDay - firstDay).count() + 1; }
    bool isOn(LocalDate day) const { return firstDay <= day && day <= lastDay; }
    bool isOver(LocalDate today) const { return lastDay < today; }
    Minutes open() const { return (hours.closes - hours.opens) * days(); }
    Minutes hoursWorked() const { return worked.value_or(open()); }
};

// The fair to which an order taken there and then belongs; none: not a listed fair. Of two that could be
// meant (two laptops added one each), the first.
const Fair* fairOf(std::span<const Fair> fairs, const std::string& place, LocalDate day);

// The one that is on today, or else the next to come; none: no fair is to come. Of several, the earliest.
const Fair* nextFair(std::span<const Fair> fairs, LocalDate today);

// Where orders may be taken today, for a choice: fairs of today, by name.
std::vector<std::string> fairsOfToday(std::span<const Fair> fairs, LocalDate today);

} // namespace holdfast

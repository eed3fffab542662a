// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is said at once of the draft: what fits, what cannot be kept and why, what to look out for. Holds
// first, then cautions, then what is in order.

#include "app/desk/shop_desk.h"
#include "app/places/fair_table/draft_words.h"
#include "app/places/fair_table/table_draft.h"
#include "app/places/fair_table/table_sums.h"
#include "app/theme/tokens.h"
#include "core/orders/decal_on_cloth.h"

#include <QString>

#include <optional>
#include <vector>

namespace holdfast::app {

struct TableMessage {
    Tone tone = Tone::Plain;
    QString lead;
    QString text;
    QString iconName;
    std::optional<FreeingAct> act; // offered as a button, about `matter`
    SlipTarget matter;
    // A decal off the cloth, and the spot on it that is offered as a button.
    std::optional<DecalSpot> spot{};
    std::size_t garment = 0;
    std::size_t decal = 0;
    // What can be done for a garment of which nothing is chosen: the same as the one before, or a list of a
    // team.
    enum class Offer { None, SameAgain, TeamList } offer = Offer::None;
    bool namesItsKind =
        false; // of all garments of a kind, which it names: no garment's number stands before it
    bool makesAgain = false; // `garment`, which is pressed, can be made again: offered as a button
    // Of what stands in the way: why no day can be given before it is put right; or, where the promise takes
    // the time for it, what its day waits for.
    QString leavesDayOpen{};
    QString dayWaitsFor{};
};

// The first that any of them says about the day, leavesDayOpen or dayWaitsFor; empty: none does.
QString firstSaid(const std::vector<TableMessage>& messages, QString TableMessage::* kind);

std::vector<TableMessage> messagesFor(const TableDraft& draft, const TableSums& sums,
                                      const ReckonedShop& shop, const BlankRailStock& stock);

} // namespace holdfast::app

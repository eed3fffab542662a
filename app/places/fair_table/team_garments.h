// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Many garments of one design on the fair table: the same once more, and a list of a team with a name, a
// number and a size each.

#include "app/places/fair_table/table_draft.h"
#include "core/orders/team_list.h"

#include <optional>
#include <vector>

namespace holdfast::app {

// The garment that others are made after: the one at hand, or where nothing is chosen for that, the one
// before. None: nothing is chosen at all.
std::optional<std::size_t> patternAt(const TableDraft& draft);

// Another one like it, at hand with its first wording, ready to be typed over.
void repeatGarment(TableDraft& draft);

// What is wrong with the line on the garment at hand: a letter without a shape, or letters too small to be
// weeded. Empty: nothing. REQUIRES: a pattern, and a line of which nothing is wrong.
Sentence whyNotOnGarment(const TableDraft& draft, const BlankStyle& style, const TeamLine& line);

// A garment for each line that nothing is wrong with, in place of the pattern. Its name goes where the
// pattern has a wording, its number where it has one of digits alone; where it has none, as a decal of its
// own.
void layTeam(TableDraft& draft, const BlankStyle& style, const std::vector<TeamLine>& lines);

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A use-by as a person reads it: a day by warmth is an estimate and has its range; a printed day is a fact.

#include "core/film/roll_condition.h"

#include <QString>

namespace holdfast::app {

// "7 Jan 2027 (estimate 2–20 Jan 2027)"; a day that is a fact is "7 Jan 2027". REQUIRES: it has a use-by.
QString useByInFull(const RollCondition& condition);
// "7 Jan (estimate 2–20 Jan)": without the year where it is plain.
QString useByInShort(const RollCondition& condition, LocalDate today);

} // namespace holdfast::app

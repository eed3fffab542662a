// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How choices are written in the shop file: a short word each, never a number. Reading an unknown word throws
// SqliteFailure (the file is from a newer version, or damaged).

#include "core/facts/blank_lot.h"
#include "core/facts/blank_style.h"
#include "core/facts/film.h"
#include "core/facts/film_roll.h"
#include "core/facts/invoice.h"
#include "core/facts/order.h"
#include "core/facts/price_rules.h"
#include "core/orders/order_draft.h"
#include "core/orders/order_file.h"

#include <optional>
#include <string_view>

namespace holdfast::db {

template <class Choice>
std::string_view codeOf(Choice choice);

template <class Choice>
Choice fromCode(std::string_view code);

// None for a word that this version does not know.
template <class Choice>
std::optional<Choice> knownCode(std::string_view code);

} // namespace holdfast::db

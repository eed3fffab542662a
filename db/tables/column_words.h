// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a column is called where two laptops changed the same thing: by the words of the form that asks for
// it, never by its name in the file.

#include "core/trade/phrase.h"

#include <optional>
#include <string_view>

namespace holdfast::db {

// "promised" → "promise"; none for a column that is in no form and no list here.
std::optional<Phrase> columnWords(std::string_view column);
// "entry" for such a one.
Phrase columnNamed(std::string_view column);

} // namespace holdfast::db

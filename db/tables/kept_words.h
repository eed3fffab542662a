// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words of the journal as its file has them: in English, and beside it the sentence that says them in any
// language. An entry from before there were sentences has its English alone, and so have words out of which a
// name was taken.

#include "core/trade/sentence.h"
#include "db/sqlite/query.h"

#include <optional>
#include <string>

namespace holdfast::db {

struct KeptWords {
    std::string english;
    std::string said; // the kept form of the sentence, or empty

    static KeptWords of(const Sentence& sentence);

    bool empty() const { return english.empty(); }
    // The sentence, where it says in English what is kept; else the English as it is. So nothing that was
    // written beside a title by somebody else shows in its place.
    Sentence sentence() const;
    // As it is written to the file: NULL for none.
    std::optional<std::string> saidOrNull() const;

    bool operator==(const KeptWords&) const = default;
};

// Out of a row with both of them.
KeptWords keptWords(const Query& row, int english, int said);

} // namespace holdfast::db

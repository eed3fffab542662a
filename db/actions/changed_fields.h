// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The fields in which a thing that was changed differs from what it was, for the title of the entry: "cost
// £5.20 (was £4.80)".

#include "core/facts/care_limits.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/sentence.h"
#include "core/trade/units.h"
#include "db/sqlite/connection.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace holdfast::db {

class ChangedFields {
public:
    // Named as the column is (db/tables/column_words.h). Where both are the same, nothing.
    void note(std::string_view column, Value before, Value after);
    // A text that may be empty.
    void noteText(std::string_view column, const std::string& before, const std::string& after);
    void noteYesNo(std::string_view column, bool before, bool after);
    void noteCare(const CareLimits& before, const CareLimits& after);
    // With what is left of it, where it was retired.
    void noteRetired(bool before, bool after, const Sentence& left);
    void add(Sentence change) { m_changes.push_back(std::move(change)); }

    bool empty() const { return m_changes.empty(); }
    // As many as a line of the history has room for.
    std::vector<Sentence> words() const;

private:
    std::vector<Sentence> m_changes;
};

Sentence gramsWords(Grams weight);        // "160 g"
Sentence daysWords(std::int64_t days);    // "30 days"
Sentence shadeWords(std::uint32_t rgb);   // "#66754C"
Sentence noneOr(const std::string& text); // "none", or the text

// Since now, or since when it already is; or not any more.
template <class AnyId>
void writeRetired(Connection& connection, const std::string& table, AnyId id, bool isRetired, Instant now) {
    connection.run("UPDATE " + table +
                       " SET retired_at = CASE WHEN ?2 THEN COALESCE(retired_at, ?3) END WHERE id = ?1",
                   id, isRetired, now);
}

} // namespace holdfast::db

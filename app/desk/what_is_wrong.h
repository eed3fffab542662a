// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What of the shop file is not as it should be, for the page in the way of work; and which of it a person has
// set aside on this laptop, to go on without it.

#include "core/facts/unread_row.h"
#include "db/check/check.h"
#include "db/journal/shop.h"

#include <string>
#include <vector>

namespace holdfast::app {

struct WhatIsWrong {
    Sentence unreadable;             // why nothing of the shop can be read; else empty
    std::vector<UnreadRow> rows;     // that are left out
    std::vector<Sentence> sentences; // whatever else a check found

    bool isNothing() const { return unreadable.empty() && rows.empty() && sentences.empty(); }
    std::size_t count() const { return rows.size() + sentences.size() + (unreadable.empty() ? 0 : 1); }
};

// What the facts in view and the last check found, each once.
WhatIsWrong together(const std::vector<UnreadRow>& inView, const db::QuickFindings& checked);

// A file that cannot be read cannot be set aside.
bool isSetAside(db::Shop& shop, const WhatIsWrong& wrong);
void setAside(db::Shop& shop, const WhatIsWrong& wrong);

// Whether the day's first check is still to be made; it is made again as long as anything is wrong.
bool wasCheckedOn(db::Shop& shop, LocalDate day);
void keepCheckedOn(db::Shop& shop, LocalDate day);

} // namespace holdfast::app

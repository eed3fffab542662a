// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The half-typed order as this laptop keeps it through a crash, a flat battery or closing time: JSON in the
// note "fair-table draft" of the shop file.

#include "app/places/fair_table/table_draft.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <QByteArray>

namespace holdfast::app {

inline constexpr std::string_view kDraftNote = db::kNoteOfAnOrderToCome;

QByteArray noteOf(const TableDraft& draft);

// A note that is damaged, or from another version, is an error and never half a draft. Styles, films and
// customers are those of the shop the note lies in; what that shop does not know (any more) is left out.
Result<TableDraft> draftFromNote(const QByteArray& note, const ShopFacts& facts);

} // namespace holdfast::app

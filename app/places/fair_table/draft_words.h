// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How the parts of a draft are named on the table.

#include "app/places/fair_table/table_draft.h"

#include <QString>

namespace holdfast::app {

// "Heron", "Name “Juno”".
QString decalWords(const DecalContent& content);
// "Tee, M, Moss"; what is not chosen yet is left out.
QString garmentWords(const TableGarment& garment, const ShopFacts& facts);

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the journal calls an undo and a redo.

#include "core/trade/sentence.h"

namespace holdfast::db {

// "Undone: Took order 426" → "Took order 426"; other titles are left as they are.
Sentence withoutUndo(const Sentence& title);

// An undo is called "Undone: …". Undoing that is doing the work again, "Redone: …": the words change places,
// they do not pile up.
bool isTitleOfUndo(const Sentence& title);
Sentence titleOfUndo(const Sentence& title);

} // namespace holdfast::db

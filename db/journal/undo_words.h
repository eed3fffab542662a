// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the journal calls an undo and a redo.

#include <string>
#include <string_view>

namespace holdfast::db {

// "Undone: Took order 426" → "Took order 426"; other titles are left as they are.
std::string_view withoutUndo(std::string_view title);

// An undo is called "Undone: …". Undoing that is doing the work again, "Redone: …": the words change places,
// they do not pile up.
bool isTitleOfUndo(std::string_view title);
std::string titleOfUndo(std::string_view title);

} // namespace holdfast::db

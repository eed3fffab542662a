// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/undo_words.h"

#include <algorithm>
#include <array>

namespace holdfast::db {

namespace {

constexpr std::string_view kUndone = "Undone: ";
constexpr std::string_view kRedone = "Redone: ";
// As earlier versions wrote them.
constexpr std::string_view kUndoneBefore = "Took back: ";
constexpr std::string_view kRedoneBefore = "Done again: ";

} // namespace

std::string_view withoutUndo(std::string_view title) {
    constexpr std::array starts{kUndone, kRedone, kUndoneBefore, kRedoneBefore};
    const auto found =
        std::ranges::find_if(starts, [&](std::string_view start) { return title.starts_with(start); });
    if (found != starts.end())
        title.remove_prefix(found->size());
    return title;
}

bool isTitleOfUndo(std::string_view title) {
    return title.starts_with(kUndone) || title.starts_with(kUndoneBefore);
}

std::string titleOfUndo(std::string_view title) {
    return std::string(isTitleOfUndo(title) ? kRedone : kUndone) + std::string(withoutUndo(title));
}

} // namespace holdfast::db

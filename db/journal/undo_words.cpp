// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/undo_words.h"

#include <algorithm>
#include <array>

namespace holdfast::db {

namespace {

constexpr std::string_view kUndonePattern = phrase("Undone: {title}").english;
constexpr std::string_view kRedonePattern = phrase("Redone: {title}").english;
// What a title begins with that has no pattern.
constexpr std::string_view kUndone = "Undone: ";
constexpr std::string_view kRedone = "Redone: ";
// As earlier versions wrote them.
constexpr std::string_view kUndoneBefore = "Took back: ";
constexpr std::string_view kRedoneBefore = "Done again: ";

} // namespace

Sentence withoutUndo(const Sentence& title) {
    if (title.pattern() == kUndonePattern || title.pattern() == kRedonePattern)
        return std::get<Parts>(title.values().front().value.held()).sentences().front();
    const std::string words = title.english();
    constexpr std::array starts{kUndone, kRedone, kUndoneBefore, kRedoneBefore};
    const auto found =
        std::ranges::find_if(starts, [&](std::string_view start) { return words.starts_with(start); });
    return found == starts.end() ? title : asItIs(words.substr(found->size()));
}

bool isTitleOfUndo(const Sentence& title) {
    const std::string words = title.english();
    return words.starts_with(kUndone) || words.starts_with(kUndoneBefore);
}

Sentence titleOfUndo(const Sentence& title) {
    return said(isTitleOfUndo(title) ? kRedonePattern : kUndonePattern,
                {{"title", asAlone(withoutUndo(title))}});
}

} // namespace holdfast::db

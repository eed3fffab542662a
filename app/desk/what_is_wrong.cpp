// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/what_is_wrong.h"

#include <algorithm>
#include <set>

namespace holdfast::app {

namespace {

constexpr const char* kSetAside = "set-aside-unread"; // a line for each: what and why
constexpr const char* kCheckedOn = "checked-on";

std::set<std::string> linesOf(const WhatIsWrong& wrong) {
    std::set<std::string> lines;
    for (const UnreadRow& row : wrong.rows)
        lines.insert(row.what.english() + " " + row.why.english());
    for (const Sentence& sentence : wrong.sentences)
        lines.insert(sentence.english());
    return lines;
}

std::set<std::string> keptLines(db::Shop& shop) {
    const auto note = shop.read([&](db::Connection&) { return shop.note(kSetAside); });
    std::set<std::string> lines;
    if (!note.ok() || !*note)
        return lines;
    std::size_t start = 0;
    while (start < (*note)->size()) {
        const std::size_t end = std::min((*note)->find('\n', start), (*note)->size());
        lines.insert((*note)->substr(start, end - start));
        start = end + 1;
    }
    return lines;
}

} // namespace

WhatIsWrong together(const std::vector<UnreadRow>& inView, const db::QuickFindings& checked) {
    WhatIsWrong wrong;
    wrong.rows = inView;
    for (const UnreadRow& row : checked.unread)
        if (std::ranges::find(wrong.rows, row) == wrong.rows.end())
            wrong.rows.push_back(row);
    for (const Sentence& sentence : checked.sentences) {
        const bool isOfARow = std::ranges::any_of(
            wrong.rows, [&](const UnreadRow& row) { return db::sentenceOf(row) == sentence; });
        if (!isOfARow)
            wrong.sentences.push_back(sentence);
    }
    return wrong;
}

bool isSetAside(db::Shop& shop, const WhatIsWrong& wrong) {
    if (!wrong.unreadable.empty())
        return false;
    const std::set<std::string> kept = keptLines(shop);
    return std::ranges::all_of(linesOf(wrong), [&](const std::string& line) { return kept.contains(line); });
}

void setAside(db::Shop& shop, const WhatIsWrong& wrong) {
    std::string note;
    for (const std::string& line : linesOf(wrong))
        note += line + "\n";
    shop.keepNote(kSetAside, note);
}

bool wasCheckedOn(db::Shop& shop, LocalDate day) {
    const auto note = shop.read([&](db::Connection&) { return shop.note(kCheckedOn); });
    return note.ok() && *note == isoDate(day);
}

void keepCheckedOn(db::Shop& shop, LocalDate day) {
    shop.keepNote(kCheckedOn, isoDate(day));
}

} // namespace holdfast::app

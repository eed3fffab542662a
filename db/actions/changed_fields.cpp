// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/changed_fields.h"

#include "db/tables/column_words.h"

#include <algorithm>
#include <array>
#include <cstdio>

namespace holdfast::db {

namespace {

constexpr std::size_t kMostFieldsSaid = 12;

} // namespace

void ChangedFields::note(std::string_view column, Value before, Value after) {
    if (before != after)
        m_changes.push_back(said(
            "{field}: {after} (was {before})",
            {{"field", columnNamed(column)}, {"after", std::move(after)}, {"before", std::move(before)}}));
}

void ChangedFields::noteText(std::string_view column, const std::string& before, const std::string& after) {
    note(column, asAlone(noneOr(before)), asAlone(noneOr(after)));
}

void ChangedFields::noteYesNo(std::string_view column, bool before, bool after) {
    const auto words = [](bool isOn) { return Value{isOn ? phrase("yes") : phrase("no")}; };
    note(column, words(before), words(after));
}

void ChangedFields::noteCare(const CareLimits& before, const CareLimits& after) {
    const std::vector<Sentence> was = careWords(before);
    const std::vector<Sentence> now = careWords(after);
    for (std::size_t axis = 0; axis < std::min(was.size(), now.size()); ++axis)
        if (was[axis] != now[axis])
            add(said("{after} (was {before})",
                     {{"after", withinLine(now[axis])}, {"before", withinLine(was[axis])}}));
}

void ChangedFields::noteRetired(bool before, bool after, const Sentence& left) {
    if (before == after)
        return;
    if (!after)
        add(said("brought back"));
    else
        add(left.empty() ? said("retired") : said("retired, {left}", {{"left", left}}));
}

std::vector<Sentence> ChangedFields::words() const {
    if (m_changes.size() <= kMostFieldsSaid)
        return m_changes;
    std::vector<Sentence> words(m_changes.begin(),
                                m_changes.begin() + static_cast<std::ptrdiff_t>(kMostFieldsSaid));
    words.push_back(
        said("{n} more", {{"n", Numeral{static_cast<std::int64_t>(m_changes.size() - kMostFieldsSaid)}}}));
    return words;
}

Sentence gramsWords(Grams weight) {
    return said("{grams} g", {{"grams", weight.value}});
}

Sentence daysWords(std::int64_t days) {
    return said("{n} day|{n} days", {{"n", days}});
}

Sentence shadeWords(std::uint32_t rgb) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "#%06X", static_cast<unsigned>(rgb & 0xFFFFFFU));
    return asItIs(text.data());
}

Sentence noneOr(const std::string& text) {
    return text.empty() ? Sentence{phrase("none")} : asItIs(text);
}

} // namespace holdfast::db

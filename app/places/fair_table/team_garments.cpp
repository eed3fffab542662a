// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/team_garments.h"

#include "app/desk/formats.h"
#include "app/theme/wording_outline.h"
#include "core/orders/lettering_strokes.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class TeamWords {
    Q_DECLARE_TR_FUNCTIONS(TeamWords)
};

bool isNumber(const Wording& wording) {
    return !wording.text.empty() &&
           std::ranges::all_of(wording.text, [](char each) { return each >= '0' && each <= '9'; });
}

std::optional<std::size_t> wordingAt(const TableGarment& garment, bool wantsNumber) {
    for (std::size_t at = 0; at < garment.decals.size(); ++at)
        if (const auto* wording = std::get_if<Wording>(&garment.decals[at].decal.content);
            wording && isNumber(*wording) == wantsNumber)
            return at;
    return std::nullopt;
}

TableGarment likeNew(TableGarment garment) {
    garment.copies = 1;
    garment.taken.reset();
    garment.isMadeAgain = false;
    for (TableDecal& decal : garment.decals)
        decal.decal.taken.reset();
    return garment;
}

// On the garment at hand of a draft of its own, so that it is laid and sized as if it were typed.
void write(TableDraft& alone, const BlankStyle& style, const std::string& text, bool isNumberText) {
    if (text.empty())
        return;
    alone.decalAt = wordingAt(alone.garment(), isNumberText);
    alone.isAdding = !alone.decalAt;
    typeWords(alone, &style, text);
}

TableGarment forLine(const TableDraft& draft, const TableGarment& pattern, const BlankStyle& style,
                     const TeamLine& line) {
    TableDraft alone = nextDraft(draft);
    alone.garments = {likeNew(pattern)};
    if (!pattern.decals.empty())
        alone.nextFilm = pattern.decals.front().decal.film;
    if (!line.size.empty())
        chooseSize(alone, &style, line.size);
    // Whoever has no name or number bears none.
    for (const bool isOfNumber : {true, false})
        if (const auto at = wordingAt(alone.garment(), isOfNumber);
            at && (isOfNumber ? line.number : line.name).empty())
            removeDecal(alone, *at);
    write(alone, style, line.name, false);
    write(alone, style, line.number, true);
    return alone.garment();
}

} // namespace

std::optional<std::size_t> patternAt(const TableDraft& draft) {
    if (draft.garment().style.isSet())
        return draft.garmentAt;
    for (std::size_t at = draft.garmentAt; at-- > 0;)
        if (draft.garments[at].style.isSet())
            return at;
    return std::nullopt;
}

void repeatGarment(TableDraft& draft) {
    const auto at = patternAt(draft);
    if (!at)
        return;
    TableGarment another = likeNew(draft.garments[*at]);
    if (draft.garment() == TableGarment{})
        draft.garment() = std::move(another);
    else {
        draft.garments.insert(draft.garments.begin() + static_cast<std::ptrdiff_t>(draft.garmentAt) + 1,
                              std::move(another));
        ++draft.garmentAt;
    }
    draft.isAdding = false;
    draft.decalAt = wordingAt(draft.garment(), false);
    if (!draft.decalAt && !draft.garment().decals.empty())
        draft.decalAt = 0;
}

Sentence whyNotOnGarment(const TableDraft& draft, const BlankStyle& style, const TeamLine& line) {
    const TableGarment garment = forLine(draft, draft.garments[*patternAt(draft)], style, line);
    for (const TableDecal& table : garment.decals) {
        const auto* wording = std::get_if<Wording>(&table.decal.content);
        if (!wording)
            continue;
        if (const QString letters = lettersWithoutShape(words(wording->text), wording->face);
            !letters.isEmpty())
            return inWindow(TeamWords::tr("No letter shape for %1.").arg(letters));
        if (strokeEstimate(*wording, table.decal.height) < kThinnestStroke)
            return inWindow(TeamWords::tr("“%1” is too long for its place: letters %2 mm high "
                                          "cannot be weeded.")
                                .arg(words(wording->text))
                                .arg(table.decal.height.value));
    }
    return {};
}

void layTeam(TableDraft& draft, const BlankStyle& style, const std::vector<TeamLine>& lines) {
    const auto at = patternAt(draft);
    if (!at)
        return;
    const TableGarment pattern = draft.garments[*at];
    std::vector<TableGarment> team;
    for (const TeamLine& line : lines)
        if (line.wrong.empty())
            team.push_back(forLine(draft, pattern, style, line));
    if (team.empty())
        return;
    if (!draft.garment().style.isSet())
        draft.garments.erase(draft.garments.begin() + static_cast<std::ptrdiff_t>(draft.garmentAt));
    // One that was taken before stays: the list comes after it.
    const auto place = draft.garments.begin() + static_cast<std::ptrdiff_t>(*at);
    const auto first = pattern.taken ? place + 1 : draft.garments.erase(place);
    draft.garmentAt = static_cast<std::size_t>(first - draft.garments.begin());
    draft.garments.insert(first, team.begin(), team.end());
    draft.decalAt.reset();
    draft.isAdding = false;
}

} // namespace holdfast::app

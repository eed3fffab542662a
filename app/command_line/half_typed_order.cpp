// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/half_typed_order.h"

#include "app/places/fair_table/draft_note.h"
#include "app/places/fair_table/table_draft.h"
#include "core/holds/assessment.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <span>

namespace holdfast::app {

namespace {

constexpr const char* kArtwork = "heron";
constexpr const char* kWords = "Juno";
constexpr const char* kCustomer = "Bronagh Tully";

// A film on the shelf that suits the style, light enough to be seen on dark cloth first.
const Film* filmFor(const ShopFacts& facts, const BlankStyle& style) {
    const Film* best = nullptr;
    for (const Film& film : facts.films) {
        const bool isOnShelf = std::ranges::any_of(facts.rolls, [&](const FilmRoll& roll) {
            return roll.film == film.id && roll.state == RollState::OnShelf && roll.left > Millimetres{1000};
        });
        if (isOnShelf && film.recipe && fitness(film, style).empty() && (!best || film.rgb > best->rgb))
            best = &film;
    }
    return best;
}

// The darkest colour: decals are cut from light film.
ColourId darkestOf(const BlankStyle& style) {
    const auto sum = [](const Colour& colour) {
        return (colour.rgb >> 16U & 0xffU) + (colour.rgb >> 8U & 0xffU) + (colour.rgb & 0xffU);
    };
    return std::ranges::min_element(style.colours, {}, sum)->id;
}

} // namespace

bool keepHalfTypedOrder(db::Shop& shop) {
    const auto facts = shop.read(
        [](db::Connection& connection) { return db::loadFactsOf(connection, std::span<const OrderId>{}); });
    if (!facts.ok())
        return false;
    for (const BlankStyle& style : facts->styles) {
        const Film* film = filmFor(*facts, style);
        if (!film || style.colours.empty() || style.sizes.empty())
            continue;
        TableDraft draft;
        chooseStyle(draft, style);
        draft.garment().size = style.sizes[style.sizes.size() / 2 - (style.sizes.size() > 1 ? 1 : 0)];
        draft.garment().colour = darkestOf(style);
        draft.nextFilm = film->id;
        chooseArtwork(draft, &style, kArtwork);
        typeWords(draft, &style, kWords);
        if (draft.garment().decals.size() > 1) {
            // The words are under the drawing.
            const DecalDraft& drawing = draft.garment().decals.front().decal;
            draft.decalAt = 1;
            moveDecal(draft, drawing.below + drawing.height + Millimetres{20}, drawing.aside);
            draft.decalAt = 0;
        }
        typeName(draft, kCustomer);
        draft.paidNow = "10.00";
        draft.paidHow = PaidHow::Cash;
        return shop.keepNote(kDraftNote, noteOf(draft).toStdString());
    }
    return false;
}

} // namespace holdfast::app

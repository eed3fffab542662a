// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/promises_in_turn.h"

#include "core/shop/lot_state.h"
#include "core/shop/promised_load.h"

#include <algorithm>
#include <vector>

namespace holdfast {

namespace {

// A decal takes its height of a roll with the gap below it, side by side with what fits next to it.
Millimetres lengthTaken(const DecalToCut& decal, Millimetres width, const ShopSettings& settings) {
    const std::int64_t room = std::max<std::int64_t>(1, width.value - 2 * settings.edgeMargin.value);
    const std::int64_t broad = decal.width.value + settings.decalGap.value;
    const std::int64_t tall = decal.height.value + settings.decalGap.value;
    const std::int64_t besides =
        std::max<std::int64_t>(1, (room + settings.decalGap.value) / std::max<std::int64_t>(1, broad));
    return {(tall + besides - 1) / besides};
}

} // namespace

AskedGarment askedFor(const ShopFacts& facts, const GarmentDraft& draft) {
    AskedGarment asked{
        draft.style, draft.size, draft.colour, {}, pressTime(routeOf(facts, asGarment(draft)))};
    for (const DecalDraft& decal : draft.decals)
        asked.decals.push_back(
            {decal.film, decal.width, decal.height, std::holds_alternative<Wording>(decal.content)});
    return asked;
}

PromisesInTurn::PromisesInTurn(const ReckonedShop& shop)
    : m_facts(shop.facts)
    , m_now(shop.now)
    , m_promised(promisedLoad(shop)) {
    // Blanks of others are theirs: what is left of a lot is what is free of it.
    std::vector<BlankLot> lots(m_facts.lots.begin(), m_facts.lots.end());
    for (BlankLot& lot : lots)
        lot.unitsLeft = shop.facts.freeUnits(lot);
    m_facts.lots = Roster<BlankLot>(std::move(lots));
    m_facts.garments = {};
}

Result<Promise> PromisesInTurn::ask(std::span<const AskedGarment> asked) const {
    return promiseFor(asked, m_facts, m_promised, m_now);
}

void PromisesInTurn::give(std::span<const AskedGarment> asked, LocalTime promised) {
    std::vector<DecalToCut> decals;
    Seconds pressing{0};
    std::vector<BlankLot> lots(m_facts.lots.begin(), m_facts.lots.end());
    for (const AskedGarment& garment : asked) {
        takeBlank(garment, lots);
        takeFilm(garment);
        decals.insert(decals.end(), garment.decals.begin(), garment.decals.end());
        pressing += garment.pressTime;
        m_promised.longestGarment = std::max(m_promised.longestGarment, garment.pressTime);
    }
    m_facts.lots = Roster<BlankLot>(std::move(lots));
    m_promised.work.push_back({m_now.later(promised, -m_facts.settings.restBeforeWash),
                               pressing + cuttingTime(decals, m_facts.settings)});
}

// The lot that the shop would reserve from: what is ready first, then what dries, then what is to be washed.
void PromisesInTurn::takeBlank(const AskedGarment& garment, std::span<BlankLot> lots) {
    BlankLot* best = nullptr;
    for (BlankLot& lot : lots)
        if (lot.style == garment.style && lot.size == garment.size && lot.colour == garment.colour &&
            lot.unitsLeft > 0 && (!best || stateOf(m_facts, lot) < stateOf(m_facts, *best)))
            best = &lot;
    const BlankStyle* style = m_facts.styles.find(garment.style);
    const bool isToWash =
        style && style->washedFirst() && (!best || stateOf(m_facts, *best) >= LotState::Unwashed);
    if (isToWash)
        m_promised.washes.push_back(
            {best ? m_now.local() : LocalTime{m_now.today() + m_facts.settings.blankLeadTime},
             style->weight});
    if (best)
        --best->unitsLeft;
}

void PromisesInTurn::takeFilm(const AskedGarment& garment) {
    for (const DecalToCut& decal : garment.decals) {
        const auto roll = std::ranges::find_if(m_promised.film, [&](const FreeFilm& film) {
            return film.film == decal.film && film.left >= lengthTaken(decal, film.width, m_facts.settings);
        });
        if (roll != m_promised.film.end())
            roll->left = roll->left - lengthTaken(decal, roll->width, m_facts.settings);
    }
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
// What a scan leads to on the cutting bench.
#include "app/places/cutting_bench/bench_panel.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/cutting_bench_place.h"

#include "app/desk/formats.h"

#include <algorithm>
#include <vector>

namespace holdfast::app {

bool CuttingBenchPlace::takeScan(const SlipTarget& matter) {
    if (m_isStale)
        refresh();
    if (matter.roll)
        return scanRoll(*matter.roll);
    return showDecalOf(matter);
}

bool CuttingBenchPlace::scanRoll(RollId roll) {
    const auto offersIt = [&](const FilmToCut& film) {
        return std::ranges::find(film.rolls, roll, &RollOffer::roll) != film.rolls.end();
    };
    const auto found = std::ranges::find_if(m_model.films(), offersIt);
    if (found == m_model.films().end())
        return false;
    const RollOffer offer = *std::ranges::find(found->rolls, roll, &RollOffer::roll);
    m_model.chooseFilm(found->film);
    if (offer.mayBeUsed)
        m_model.setFirstRoll(roll);
    desk().say(offer.mayBeUsed ? tr("%1 comes first.").arg(rollLabel(m_model.facts(), roll))
                               : tr("%1: %2").arg(rollLabel(m_model.facts(), roll), words(offer.reason)));
    takeKeyboard();
    return true;
}

bool CuttingBenchPlace::showDecalOf(const SlipTarget& matter) {
    std::vector<const Garment*> garments;
    for (const Garment& garment : m_model.facts().garments)
        if (matter.garment ? garment.id == *matter.garment : matter.order && garment.order == *matter.order)
            garments.push_back(&garment);
    const auto isHere = [&](const FilmToCut& film, DecalId id) {
        return std::ranges::find(film.waiting, id) != film.waiting.end() || film.notYet.contains(id);
    };
    for (const Garment* garment : garments)
        for (const Decal& decal : garment->decals)
            for (const FilmToCut& film : m_model.films()) {
                if (!isHere(film, decal.id))
                    continue;
                m_model.chooseFilm(film.film);
                m_model.choose(decal.id);
                takeKeyboard();
                return true;
            }
    return std::ranges::any_of(garments, [&](const Garment* garment) {
        return std::ranges::any_of(garment->decals,
                                   [&](const Decal& decal) { return m_panel->showCut(decal.id); });
    });
}

} // namespace holdfast::app

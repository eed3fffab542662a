// SPDX-License-Identifier: GPL-3.0-or-later
// A garment of the draft as core and the order see it.

#include "app/places/fair_table/table_draft.h"
#include "app/theme/drawings.h"
#include "app/theme/wording_outline.h"
#include "core/press/layers.h"

#include <algorithm>
#include <cmath>

namespace holdfast::app {

double aspectOf(const DecalContent& content) {
    const auto* artwork = std::get_if<Artwork>(&content);
    const double aspect = artwork ? artworkAspect(QString::fromStdString(artwork->name))
                                  : wordingAspect(std::get<Wording>(content));
    return std::isfinite(aspect) && aspect > 0 ? std::clamp(aspect, 0.01, 100.0) : 1.0;
}

GarmentDraft garmentDraft(const TableGarment& garment) {
    GarmentDraft draft{garment.style, garment.size,       garment.colour, {}, {},
                       garment.taken, garment.isMadeAgain};
    for (const TableDecal& decal : garment.decals)
        draft.decals.push_back(decal.decal);
    const Garment asked = asGarment(draft);
    for (std::size_t upper = 0; upper < draft.decals.size(); ++upper) {
        draft.decals[upper].layer = 1;
        for (std::size_t lower = 0; lower < upper; ++lower)
            if (overlap(asked.decals[lower], asked.decals[upper]))
                draft.decals[upper].layer =
                    std::max(draft.decals[upper].layer, draft.decals[lower].layer + 1);
    }
    return draft;
}

std::optional<std::size_t> overlappedBy(const TableDraft& draft) {
    if (!draft.decalAt)
        return std::nullopt;
    const std::size_t at = *draft.decalAt;
    GarmentDraft plain;
    for (const TableDecal& decal : draft.garment().decals)
        plain.decals.push_back(decal.decal);
    const Garment asked = asGarment(plain);
    const auto overlaps = [&](std::size_t other) { return overlap(asked.decals[at], asked.decals[other]); };
    for (std::size_t over = at + 1; over < asked.decals.size(); ++over)
        if (overlaps(over))
            return over;
    for (std::size_t under = at; under-- > 0;)
        if (overlaps(under))
            return under;
    return std::nullopt;
}

} // namespace holdfast::app

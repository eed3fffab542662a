// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/decal_on_cloth.h"

#include "core/garments/garment_scale.h"
#include "core/garments/on_cloth.h"
#include "core/press/layers.h"
#include "core/trade/sentence.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace holdfast {

namespace {

// What no way round is needed for: film on a zip or on buttons keeps them from being opened.
std::vector<GarmentPart> mayLieAcross(const BlankStyle& style) {
    const auto hasWay = [&](Obstacle obstacle) {
        return std::ranges::any_of(style.obstacles, [&](const ObstacleOnStyle& on) {
            return on.obstacle == obstacle && on.way.has_value();
        });
    };
    std::vector<GarmentPart> across;
    if (hasWay(Obstacle::Seams))
        across = {GarmentPart::Pocket, GarmentPart::Seam, GarmentPart::Armhole, GarmentPart::Collar,
                  GarmentPart::Strap};
    if (hasWay(Obstacle::ThickHem))
        across.push_back(GarmentPart::Hem);
    return across;
}

// The wearer's left is at the right of the garment as it is seen from the front.
double seenAside(const DecalSpot& spot) {
    const auto aside = static_cast<double>(spot.aside.value);
    return sideOf(spot.placement) == Side::Back ? -aside : aside;
}

SheetBox boxOf(const DecalSpot& spot) {
    const auto width = static_cast<double>(spot.width.value);
    const auto top = static_cast<double>(spot.below.value);
    const double left = seenAside(spot) - width / 2;
    return {left, top, left + width, top + static_cast<double>(spot.height.value)};
}

DecalSpot spotAt(const SheetBox& box, Placement placement) {
    const auto whole = [](double length) { return Millimetres{std::llround(length)}; };
    DecalSpot spot{placement, whole(box.top), whole(box.centre().x), whole(box.width()), whole(box.height())};
    spot.aside = {std::llround(seenAside(spot))};
    return spot;
}

// A garment's cloth as one side of it is seen.
class Sight {
public:
    Sight(const BlankStyle& style, std::string_view size, Placement placement)
        : m_across(mayLieAcross(style))
        , m_cloth{garmentShape(style.outline), garmentMeasures(style.outline).seam,
                  millimetresPerUnit(style.outline, size), sideOf(placement) == Side::Back, m_across}
        , m_zone(placement == Placement::Sleeve ? ClothZone::Sleeve : ClothZone::Body) {}
    Sight(const Sight&) = delete;
    Sight& operator=(const Sight&) = delete;

    const Cloth& cloth() const { return m_cloth; }
    ClothZone zone() const { return m_zone; }

private:
    std::vector<GarmentPart> m_across;
    Cloth m_cloth;
    ClothZone m_zone;
};

// "a", "a and b", "a, b and c". REQUIRES: some parts.
Sentence joined(std::vector<Sentence> parts) {
    Sentence last = std::move(parts.back());
    parts.pop_back();
    return parts.empty()
               ? last
               : said("{others} and {last}", {{"others", std::move(parts)}, {"last", std::move(last)}});
}

// Where it runs over an edge, the hem along that edge goes without saying.
bool isWorthSaying(const OffCloth& off, GarmentPart part) {
    const bool isOverEdge = off.above > 0 || off.below > 0 || off.aside > 0;
    return !isOverEdge || part == GarmentPart::Zip || part == GarmentPart::Buttons ||
           part == GarmentPart::Pocket;
}

} // namespace

DecalSpot spotOf(const Decal& decal) {
    return {decal.placement, decal.below, decal.aside, decal.width, decal.height};
}

Sentence offClothWords(const BlankStyle& style, std::string_view size, const DecalSpot& spot) {
    const Sight sight{style, size, spot.placement};
    const OffCloth off = offCloth(sight.cloth(), boxOf(spot));
    if (off.isClean())
        return {};
    if (off.isAllOff)
        return said("It lies outside the garment.");
    const auto by = [](double much) {
        return std::vector<NamedValue>{{"length", Millimetres{std::max(1LL, std::llround(much))}}};
    };
    std::vector<Sentence> over, across;
    if (off.above > 0)
        over.push_back(said("{length} over the upper edge", by(off.above)));
    if (off.below > 0)
        over.push_back(said("{length} over the lower edge", by(off.below)));
    if (off.aside > 0)
        over.push_back(said("{length} over the side edge", by(off.aside)));
    for (const GarmentPart part : off.across)
        if (isWorthSaying(off, part))
            across.push_back(partWords(part));
    if (across.empty())
        return said("It runs {over}.", {{"over", joined(std::move(over))}});
    if (over.empty())
        return said("It lies across {parts}.", {{"parts", joined(std::move(across))}});
    return said("It runs {over} and lies across {parts}.",
                {{"over", joined(std::move(over))}, {"parts", joined(std::move(across))}});
}

std::optional<DecalSpot> betterSpot(const BlankStyle& style, std::string_view size, const DecalSpot& spot,
                                    std::span<const DecalSpot> others) {
    const Sight sight{style, size, spot.placement};
    const SheetBox box = boxOf(spot);
    if (liesOnCloth(sight.cloth(), box))
        return std::nullopt;
    std::vector<SheetBox> clearOf;
    for (const DecalSpot& other : others)
        if (sideOf(other.placement) == sideOf(spot.placement) && !shareArea(boxOf(other), box))
            clearOf.push_back(boxOf(other));
    const auto found = largestOnCloth(sight.cloth(), sight.zone(), box, clearOf);
    return found ? std::optional{spotAt(*found, spot.placement)} : std::nullopt;
}

Sentence wayToSpot(const DecalSpot& from, const DecalSpot& to) {
    std::vector<Sentence> steps;
    if (from.width != to.width || from.height != to.height)
        steps.push_back(said("as {size}", {{"size", Extent{to.width, to.height}}}));
    const auto by = [](std::int64_t much) {
        return std::vector<NamedValue>{{"length", Millimetres{std::abs(much)}}};
    };
    const std::int64_t down = (to.below - from.below).value;
    const std::int64_t left = (to.aside - from.aside).value;
    if (down != 0)
        steps.push_back(down > 0 ? said("{length} down", by(down)) : said("{length} up", by(down)));
    if (left != 0)
        steps.push_back(left > 0 ? said("{length} to the wearer’s left", by(left))
                                 : said("{length} to the wearer’s right", by(left)));
    return steps.empty() ? Sentence{}
                         : said("{steps}", {{"steps", Parts{std::move(steps), Beginning::Small}}});
}

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/table_draft.h"

#include "app/places/fair_table/table_cloth.h"
#include "core/garments/placement_presets.h"

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr std::int64_t kSmallestSide = 5;
constexpr std::int64_t kLargestSide = 2000;
constexpr std::int64_t kFarthestBelow = 2000;
constexpr std::int64_t kFarthestAside = 1000;
constexpr std::int64_t kBetweenDecals = 20; // words under artwork, and one decal under another

// What a decal measures where no garment says otherwise: a middling chest.
constexpr PlacementPreset kAnywhere{Placement::Chest, {75}, {0}, {240}, {300}, {380}};

bool isWords(const TableDecal& decal) {
    return std::holds_alternative<Wording>(decal.decal.content);
}

PlacementPreset presetOn(const BlankStyle* style, Placement placement, const std::string& size) {
    if (!style)
        return kAnywhere;
    if (const auto preset = presetFor(style->outline, placement, size))
        return *preset;
    const auto presets = presetsFor(style->outline);
    return presets.empty() ? kAnywhere
                           : presetFor(style->outline, presets.front().placement, size).value_or(kAnywhere);
}

std::int64_t side(double length) {
    return std::clamp<std::int64_t>(std::llround(length), kSmallestSide, kLargestSide);
}

void sizeByWidth(DecalDraft& decal, double width) {
    const double aspect = aspectOf(decal.content);
    decal.width = {side(width)};
    decal.height = {side(static_cast<double>(decal.width.value) / aspect)};
}

// Artwork as wide as is usual there, or as tall as fits.
void sizeArtwork(DecalDraft& decal, const PlacementPreset& preset) {
    const double tallest = static_cast<double>(preset.tallest.value);
    const double wide = static_cast<double>(preset.wide.value);
    // Rounded down: a width rounded up would make it a millimetre too tall.
    sizeByWidth(decal, std::min(wide, std::floor(tallest * aspectOf(decal.content))));
}

// Letters a sixth of what is widest there, smaller where the words would not fit.
void sizeWords(TableDecal& table, const PlacementPreset& preset) {
    DecalDraft& decal = table.decal;
    const double aspect = aspectOf(decal.content);
    const double usual = std::clamp(static_cast<double>(preset.widest.value) / 6.0, 14.0, 60.0);
    const double height = table.isSizedByHand ? static_cast<double>(decal.height.value) : usual;
    const double widest =
        table.isSizedByHand ? static_cast<double>(kLargestSide) : static_cast<double>(preset.widest.value);
    const double width = std::min(height * aspect, widest);
    decal.width = {side(width)};
    decal.height = {side(width / aspect)};
}

void resize(TableDecal& decal, const PlacementPreset& preset) {
    if (isWords(decal))
        sizeWords(decal, preset);
    else
        sizeArtwork(decal.decal, preset);
}

// Where a decal of this placement begins: at the preset's place, or below what is there already.
Millimetres freeBelow(const TableGarment& garment, const PlacementPreset& preset, const TableDecal* itself) {
    Millimetres below = preset.below;
    for (const TableDecal& other : garment.decals)
        if (&other != itself && other.decal.placement == preset.placement)
            below = std::max(below, other.decal.below + other.decal.height + Millimetres{kBetweenDecals});
    return {std::min(below.value, kFarthestBelow)};
}

TableDecal newDecal(const TableDraft& draft, const BlankStyle* style, DecalContent content) {
    const PlacementPreset preset = presetOn(style, placementShown(draft, style), draft.garment().size);
    TableDecal made;
    made.decal.content = std::move(content);
    made.decal.film = draft.nextFilm;
    made.decal.placement = preset.placement;
    made.decal.aside = preset.aside;
    made.decal.below = freeBelow(draft.garment(), preset, nullptr);
    resize(made, preset);
    return made;
}

// What nobody moved by hand begins on the cloth.
void keepOnCloth(TableGarment& garment, const BlankStyle* style, std::size_t decal) {
    const TableDecal& laid = garment.decals[decal];
    if (!style || laid.isMovedByHand || laid.isSizedByHand)
        return;
    if (const auto spot = spotOnCloth(garment, *style, decal))
        layOn(garment.decals[decal], *spot);
}

void addDecal(TableDraft& draft, const BlankStyle* style, TableDecal decal) {
    auto& decals = draft.garment().decals;
    if (decals.size() >= kMostDecalsOnGarment)
        return;
    decals.push_back(std::move(decal));
    draft.decalAt = decals.size() - 1;
    draft.isAdding = false;
    keepOnCloth(draft.garment(), style, decals.size() - 1);
}

void layAsUsual(TableDecal& decal, const TableGarment& garment, const BlankStyle* style) {
    const PlacementPreset preset = presetOn(style, decal.decal.placement, garment.size);
    decal.decal.placement = preset.placement;
    decal.decal.aside = preset.aside;
    decal.decal.below = freeBelow(garment, preset, &decal);
    decal.isSizedByHand = false;
    decal.isMovedByHand = false;
    resize(decal, preset);
}

// One after the other: each begins below those before it.
template <class Moves>
void layAgain(TableGarment& garment, const BlankStyle* style, Moves moves) {
    auto decals = std::move(garment.decals);
    garment.decals.clear();
    for (TableDecal& decal : decals) {
        const bool isLaid = moves(decal);
        if (isLaid)
            layAsUsual(decal, garment, style);
        garment.decals.push_back(std::move(decal));
        if (isLaid)
            keepOnCloth(garment, style, garment.decals.size() - 1);
    }
}

// The decal that artwork or words go to; see the header.
std::optional<std::size_t> target(const TableDraft& draft, bool wantsWords) {
    const TableDecal* worked = draft.decal();
    if (draft.isAdding)
        return std::nullopt;
    if (worked && isWords(*worked) == wantsWords)
        return draft.decalAt;
    const auto& decals = draft.garment().decals;
    const auto found = std::ranges::find_if(decals, [&](const TableDecal& other) {
        return isWords(other) == wantsWords && (!worked || other.decal.placement == worked->decal.placement);
    });
    if (found == decals.end())
        return std::nullopt;
    return static_cast<std::size_t>(found - decals.begin());
}

bool sameFilm(const TableGarment& garment) {
    return std::ranges::all_of(garment.decals, [&](const TableDecal& decal) {
        return decal.decal.film == garment.decals.front().decal.film;
    });
}

} // namespace

bool TableDraft::isUntouched() const {
    return garments.size() == 1 && garments.front() == TableGarment{} && !customer && customerName.empty() &&
           customerPhone.empty() && paidNow.empty() && note.empty() && lines.empty() && !wantedOn && !opened;
}

TableDraft nextDraft(const TableDraft& before) {
    TableDraft draft;
    draft.nextFilm = before.nextFilm;
    draft.nextFace = before.nextFace;
    return draft;
}

void chooseStyle(TableDraft& draft, const BlankStyle& style) {
    TableGarment& garment = draft.garment();
    garment.style = style.id;
    if (std::ranges::find(style.sizes, garment.size) == style.sizes.end())
        garment.size.clear();
    if (!style.colour(garment.colour))
        garment.colour = {};
    if (style.sizes.size() == 1)
        garment.size = style.sizes.front();
    const auto offered = std::ranges::find(style.colours, false, &Colour::isRetired);
    if (std::ranges::count(style.colours, false, &Colour::isRetired) == 1)
        garment.colour = offered->id;
    if (draft.nextPlacement && !presetFor(style.outline, *draft.nextPlacement))
        draft.nextPlacement.reset();
    // From the collar of a tee to the mouth of a bag: each goes again to where it is usual there.
    layAgain(garment, &style, [](const TableDecal&) { return true; });
}

void chooseSize(TableDraft& draft, const BlankStyle* style, const std::string& size) {
    TableGarment& garment = draft.garment();
    if (garment.size == size)
        return;
    garment.size = size;
    layAgain(garment, style,
             [](const TableDecal& decal) { return !decal.isMovedByHand && !decal.isSizedByHand; });
}

void chooseArtwork(TableDraft& draft, const BlankStyle* style, const std::string& artwork) {
    const auto at = target(draft, false);
    if (!at) {
        addDecal(draft, style, newDecal(draft, style, Artwork{artwork}));
        return;
    }
    TableDecal& decal = draft.garment().decals[*at];
    decal.decal.content = Artwork{artwork};
    if (decal.isSizedByHand)
        sizeByWidth(decal.decal, static_cast<double>(decal.decal.width.value));
    else
        resize(decal, presetOn(style, decal.decal.placement, draft.garment().size));
    keepOnCloth(draft.garment(), style, *at);
    draft.decalAt = at;
}

void typeWords(TableDraft& draft, const BlankStyle* style, const std::string& words) {
    const auto at = target(draft, true);
    if (!at) {
        if (!words.empty())
            addDecal(draft, style, newDecal(draft, style, Wording{words, draft.nextFace}));
        return;
    }
    if (words.empty()) {
        removeDecal(draft, *at);
        return;
    }
    TableDecal& decal = draft.garment().decals[*at];
    decal.decal.content =
        Wording{words, std::get<Wording>(decal.decal.content).face}; // its outline is another
    resize(decal, presetOn(style, decal.decal.placement, draft.garment().size));
    keepOnCloth(draft.garment(), style, *at);
    draft.decalAt = at;
}

void chooseFace(TableDraft& draft, Face face) {
    draft.nextFace = face;
    const auto at = target(draft, true);
    if (!at)
        return;
    TableDecal& decal = draft.garment().decals[*at];
    decal.decal.content = Wording{std::get<Wording>(decal.decal.content).text, face};
    sizeByWidth(decal.decal, static_cast<double>(decal.decal.height.value) * aspectOf(decal.decal.content));
}

void choosePlacement(TableDraft& draft, const BlankStyle* style, Placement placement) {
    draft.nextPlacement = placement;
    if (!draft.decalAt)
        return;
    TableDecal& decal = draft.garment().decals[*draft.decalAt];
    decal.decal.placement = placement;
    layAsUsual(decal, draft.garment(), style);
    keepOnCloth(draft.garment(), style, *draft.decalAt);
}

bool filmGoesToAll(const TableDraft& draft) {
    return draft.garment().decals.size() > 1 && sameFilm(draft.garment());
}

void chooseFilm(TableDraft& draft, FilmId film, bool isAlone) {
    const bool toAll = filmGoesToAll(draft) && !isAlone;
    draft.nextFilm = film;
    auto& decals = draft.garment().decals;
    for (std::size_t at = 0; at < decals.size(); ++at)
        if (toAll || at == draft.decalAt)
            decals[at].decal.film = film;
}

void beginDecal(TableDraft& draft) {
    draft.decalAt.reset();
    draft.isAdding = true;
}

void moveDecal(TableDraft& draft, Millimetres below, Millimetres aside) {
    if (!draft.decalAt)
        return;
    TableDecal& table = draft.garment().decals[*draft.decalAt];
    table.decal.below = {std::clamp<std::int64_t>(below.value, 0, kFarthestBelow)};
    table.decal.aside = {std::clamp<std::int64_t>(aside.value, -kFarthestAside, kFarthestAside)};
    table.isMovedByHand = true;
}

void takeSpot(TableDraft& draft, std::size_t garment, std::size_t decal, const DecalSpot& spot) {
    if (garment >= draft.garments.size() || decal >= draft.garments[garment].decals.size())
        return;
    TableDecal& table = draft.garments[garment].decals[decal];
    layOn(table, spot);
    table.isMovedByHand = true;
}

void widenDecal(TableDraft& draft, Millimetres width) {
    if (!draft.decalAt)
        return;
    TableDecal& decal = draft.garment().decals[*draft.decalAt];
    sizeByWidth(decal.decal, static_cast<double>(width.value));
    decal.isSizedByHand = true;
}

void removeDecal(TableDraft& draft, std::size_t decal) {
    auto& decals = draft.garment().decals;
    decals.erase(decals.begin() + static_cast<std::ptrdiff_t>(decal));
    if (decals.empty())
        draft.decalAt.reset();
    else
        draft.decalAt = std::min(decal, decals.size() - 1);
}

void raiseDecal(TableDraft& draft, std::size_t decal, int by) {
    auto& decals = draft.garment().decals;
    const auto to = static_cast<std::ptrdiff_t>(decal) + by;
    if (to < 0 || to >= std::ssize(decals))
        return;
    std::swap(decals[decal], decals[static_cast<std::size_t>(to)]);
    draft.decalAt = static_cast<std::size_t>(to);
}

void laySwapped(TableDraft& draft, std::size_t decal, std::size_t other) {
    const int by = decal < other ? 1 : -1;
    for (std::size_t at = decal; at != other; at = *draft.decalAt)
        raiseDecal(draft, at, by);
}

void chooseCustomer(TableDraft& draft, const Customer& customer) {
    draft.customer = customer.id;
    draft.customerName = customer.name;
    draft.customerPhone = customer.phone;
    draft.knownPhone = customer.phone;
}

void typeName(TableDraft& draft, const std::string& name) {
    draft.customerName = name;
    draft.customer.reset();
    draft.knownPhone.clear();
}

void addGarment(TableDraft& draft) {
    draft.garments.push_back({});
    draft.garmentAt = draft.garments.size() - 1;
    draft.decalAt.reset();
    draft.isAdding = false;
    draft.nextPlacement.reset();
}

void removeGarment(TableDraft& draft, std::size_t garment) {
    if (draft.garments.size() == 1)
        draft.garments.front() = {};
    else
        draft.garments.erase(draft.garments.begin() + static_cast<std::ptrdiff_t>(garment));
    draft.garmentAt = std::min(garment, draft.garments.size() - 1);
    draft.decalAt.reset();
    draft.isAdding = false;
}

const TableDecal* wordsShown(const TableDraft& draft) {
    const auto at = target(draft, true);
    return at ? &draft.garment().decals[*at] : nullptr;
}

const TableDecal* artworkShown(const TableDraft& draft) {
    const auto at = target(draft, false);
    return at ? &draft.garment().decals[*at] : nullptr;
}

Placement placementShown(const TableDraft& draft, const BlankStyle* style) {
    if (const TableDecal* decal = draft.decal())
        return decal->decal.placement;
    if (draft.nextPlacement)
        return *draft.nextPlacement;
    return style && !presetsFor(style->outline).empty() ? presetsFor(style->outline).front().placement
                                                        : Placement::Chest;
}

} // namespace holdfast::app

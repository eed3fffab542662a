// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/layers.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace holdfast {

bool overlap(const Decal& one, const Decal& other) {
    if (sideOf(one.placement) != sideOf(other.placement))
        return false;
    const bool shareHeight = one.below < other.below + other.height && other.below < one.below + one.height;
    // Twice the distance of the centres against the sum of the widths: no half millimetres.
    const std::int64_t apart = std::abs(one.aside.value - other.aside.value) * 2;
    return shareHeight && apart < one.width.value + other.width.value;
}

Decal decalAround(std::span<const Decal* const> decals) {
    std::int64_t left = std::numeric_limits<std::int64_t>::max(),
                 right = std::numeric_limits<std::int64_t>::min();
    std::int64_t top = left, bottom = right;
    for (const Decal* decal : decals) {
        left = std::min(left, decal->aside.value * 2 - decal->width.value);
        right = std::max(right, decal->aside.value * 2 + decal->width.value);
        top = std::min(top, decal->below.value);
        bottom = std::max(bottom, decal->below.value + decal->height.value);
    }
    Decal all;
    all.width = {(right - left + 1) / 2};
    all.height = {bottom - top};
    return all;
}

namespace {

auto orderOfWork(const DecalPass& pass) {
    return std::tuple(pass.side, pass.decal->layer, pass.isTacked, pass.recipe.temperature, pass.closed(),
                      pass.recipe.pressure, pass.recipe.peel, pass.recipe.coolBeforePeel);
}

const std::optional<Recipe>& recipeOf(const ShopFacts& facts, const Decal& decal) {
    return facts.films.at(decal.film).recipe;
}

DecalPass passOf(const ShopFacts& facts, const Garment& garment, const Decal& decal, const Recipe& own) {
    DecalPass pass{&decal, sideOf(decal.placement), own, false};
    for (const Decal& neighbour : garment.decals) {
        const auto& recipe = recipeOf(facts, neighbour);
        if (neighbour.id == decal.id || !recipe || !overlap(decal, neighbour))
            continue;
        if (neighbour.layer > decal.layer)
            pass.isTacked = true;
        if (std::abs(recipe->temperature.value - own.temperature.value) > kFilmsAgreeWithin)
            continue;
        pass.recipe.temperature = std::min(pass.recipe.temperature, recipe->temperature);
        if (neighbour.layer < decal.layer)
            pass.recipe.dwell = std::max(pass.recipe.dwell, recipe->dwell);
    }
    return pass;
}

} // namespace

bool DecalPass::mayJoin(const DecalPass& other) const {
    return orderOfWork(*this) == orderOfWork(other);
}

std::vector<DecalPass> passesOf(const ShopFacts& facts, const Garment& garment) {
    std::vector<DecalPass> passes;
    for (const Decal& decal : garment.decals)
        if (const auto& recipe = recipeOf(facts, decal))
            passes.push_back(passOf(facts, garment, decal, *recipe));
    std::ranges::stable_sort(passes, {}, orderOfWork);
    return passes;
}

} // namespace holdfast

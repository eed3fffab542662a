// SPDX-License-Identifier: GPL-3.0-or-later
// Moving decals by hand, and what is known of lengths: which layout is better, which is proved the shortest,
// and what pins cost. The part of bench_model.h that does so.
#include "app/places/cutting_bench/bench_model.h"

#include "core/cutting/pins.h"

#include <algorithm>

namespace holdfast::app {

namespace {

std::size_t placed(const std::vector<Nest>& nests) {
    std::size_t count = 0;
    for (const Nest& nest : nests)
        count += nest.decals.size();
    return count;
}

Millimetres lengthOf(const std::vector<Nest>& nests) {
    Millimetres length;
    for (const Nest& nest : nests)
        length += nest.length;
    return length;
}

bool isBetter(const FilmNests& one, const FilmNests& other) {
    const std::size_t lying = placed(one.nests);
    const std::size_t otherLying = placed(other.nests);
    return lying > otherLying || (lying == otherLying && lengthOf(one.nests) < lengthOf(other.nests));
}

bool isProvedShortest(const FilmNests& laid) {
    return laid.lack.empty() && laid.nests.size() <= 1 &&
           std::ranges::all_of(laid.nests, [](const Nest& nest) { return nest.length <= nest.leastLength; });
}

} // namespace

// ── moving by hand ────────────────────────────────────────────────────────────────────────────────────

std::optional<DecalPin> BenchModel::freePlace(DecalId id, const DecalPin& wanted) const {
    const Nest* nest = nestOf(id);
    return nest ? nearestFreePlace(*nest, id, wanted) : std::nullopt;
}

bool BenchModel::moveTo(DecalId id, const DecalPin& wanted) {
    const auto place = isBeingLaid() ? std::nullopt : freePlace(id, wanted);
    if (!place || *place == placeOf(*lying(id)))
        return false;
    FilmOnBench& bench = own();
    const bool isFirst = canBePinned(id);
    rememberWithoutPins();
    const auto nest = static_cast<std::size_t>(nestOf(id) - bench.laid.nests.data());
    bench.laid.nests[nest] = withDecalAt(bench.laid.nests[nest], id, *place);
    if (isFirst) {
        bench.wish.pins[id] = *place;
    } else {
        bench.laid.nests[nest] = withPin(bench.laid.nests[nest], id, false);
    }
    bench.isSearched = true;
    emit moved();
    return true;
}

bool BenchModel::nudge(Millimetres along, Millimetres across) {
    const auto id = chosen();
    const NestedDecal* lies = id ? lying(*id) : nullptr;
    if (!lies)
        return false;
    DecalPin wanted = placeOf(*lies);
    wanted.along += along;
    wanted.across += across;
    return moveTo(*id, wanted);
}

bool BenchModel::turn() {
    const auto id = chosen();
    const NestedDecal* lies = id ? lying(*id) : nullptr;
    if (!lies || hasGrain())
        return false;
    DecalPin wanted = placeOf(*lies);
    wanted.isTurned = !wanted.isTurned;
    return moveTo(*id, wanted);
}

bool BenchModel::canBePinned(DecalId id) const {
    return film() && !nests().empty() && nests().front().find(id) != nullptr;
}

bool BenchModel::turnPin() {
    const auto id = chosen();
    if (!id || isBeingLaid() || !canBePinned(*id))
        return false;
    FilmOnBench& bench = own();
    const NestedDecal lies = *lying(*id);
    rememberWithoutPins();
    bench.laid.nests.front() = withPin(bench.laid.nests.front(), *id, !lies.isPinned);
    if (lies.isPinned)
        bench.wish.pins.erase(*id);
    else
        bench.wish.pins[*id] = placeOf(lies);
    emit moved();
    return true;
}

// ── lengths ───────────────────────────────────────────────────────────────────────────────────────────

// Of the same wish: what lies there is worth remembering until the wish changes.
void BenchModel::rememberWithoutPins() {
    FilmOnBench& bench = own();
    if (!hasPins() && (!bench.withoutPins || isBetter(bench.laid, *bench.withoutPins)))
        bench.withoutPins = bench.laid;
}

void BenchModel::take(const FilmNests& found) {
    if (!film() || isBeingLaid() || !isBetter(found, onBench().laid))
        return;
    own().laid = found;
    keepChosen();
    emit moved();
}

void BenchModel::takeKnown() {
    if (film() && !hasPins() && onBench().withoutPins)
        take(FilmNests{*onBench().withoutPins});
}

bool BenchModel::isShortest() const {
    return film() && !isBeingLaid() && isProvedShortest(onBench().laid);
}

std::optional<Millimetres> BenchModel::costOfPins() const {
    if (!film() || !onBench().withoutPins)
        return std::nullopt;
    const FilmNests& known = *onBench().withoutPins;
    if (placed(known.nests) != placed(nests()) || lengthOf(known.nests) >= lengthOf(nests()))
        return std::nullopt;
    return lengthOf(nests()) - lengthOf(known.nests);
}

bool BenchModel::isCostOfPinsProved() const {
    return film() && onBench().withoutPins && isProvedShortest(*onBench().withoutPins);
}

} // namespace holdfast::app

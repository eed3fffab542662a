// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_model.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <set>

namespace holdfast::app {

namespace {

constexpr std::int64_t kWidestGap = 50; // mm

// Everything that a film's nests depend on, except the maker's wish.
std::vector<std::int64_t> reckonedFrom(const ReckonedShop& shop, const FilmToCut& film,
                                       const DecalsOnGarments& decals) {
    std::vector<std::int64_t> from{shop.facts.settings.edgeMargin.value};
    if (const Film* known = shop.facts.films.find(film.film))
        from.push_back(known->hasGrain ? 1 : 0);
    for (const RollOffer& offer : film.rolls) {
        from.push_back(offer.roll.value);
        from.push_back(offer.mayBeUsed ? 1 : 0);
        if (const FilmRoll* roll = shop.facts.rolls.find(offer.roll))
            from.insert(from.end(), {roll->width.value, roll->left.value});
    }
    for (const DecalId id : film.waiting) {
        from.push_back(id.value);
        if (const auto found = decals.find(id); found != decals.end())
            from.insert(from.end(), {found->second.decal->width.value, found->second.decal->height.value});
    }
    return from;
}

} // namespace

DecalPin placeOf(const NestedDecal& decal) {
    return {decal.lies.across, decal.lies.along, decal.isTurned};
}

BenchModel::BenchModel(QObject* parent)
    : QObject(parent) {}

// ── the shop and its films ────────────────────────────────────────────────────────────────────────────

void BenchModel::show(std::shared_ptr<const ReckonedShop> shop) {
    const std::optional<FilmId> before = film() ? std::optional{film()->film} : std::nullopt;
    m_shop = std::move(shop);
    m_decals = decalsOnGarments(m_shop->facts);
    m_films = filmsToCut(*m_shop);
    const auto same =
        std::ranges::find_if(m_films, [&](const FilmToCut& each) { return before == each.film; });
    if (same != m_films.end())
        m_filmAt = static_cast<int>(same - m_films.begin());
    else
        m_filmAt = m_films.empty() ? -1 : std::clamp(m_filmAt, 0, static_cast<int>(m_films.size()) - 1);
    if (!film() || before != film()->film)
        m_laying.drop();
    emit filmsChanged();
    refreshNests();
}

void BenchModel::chooseFilm(int at) {
    if (at < 0 || at >= static_cast<int>(m_films.size()) || at == m_filmAt)
        return;
    m_laying.drop();
    m_filmAt = at;
    emit filmsChanged();
    refreshNests();
}

bool BenchModel::chooseFilm(FilmId film) {
    const auto found = std::ranges::find(m_films, film, &FilmToCut::film);
    if (found == m_films.end())
        return false;
    chooseFilm(static_cast<int>(found - m_films.begin()));
    return true;
}

const FilmToCut* BenchModel::film() const {
    return m_filmAt < 0 ? nullptr : &m_films[static_cast<std::size_t>(m_filmAt)];
}

bool BenchModel::hasGrain() const {
    return film() && facts().films.at(film()->film).hasGrain;
}

std::optional<RollId> BenchModel::firstRollOf(const FilmToCut& film) const {
    if (const auto found = m_onBench.find(film.film); found != m_onBench.end() && found->second.firstRoll)
        return found->second.firstRoll;
    const auto usable = std::ranges::find_if(film.rolls, &RollOffer::mayBeUsed);
    return usable == film.rolls.end() ? std::nullopt : std::optional{usable->roll};
}

// A film that was not laid out yet has nothing on it.
const FilmOnBench& BenchModel::onBench() const {
    HOLDFAST_ASSERT(film());
    static const FilmOnBench nothing;
    const auto found = m_onBench.find(film()->film);
    return found == m_onBench.end() ? nothing : found->second;
}

FilmOnBench& BenchModel::own() {
    HOLDFAST_ASSERT(film());
    return m_onBench[film()->film];
}

void BenchModel::refreshNests() {
    const FilmToCut* shown = film();
    if (!shown) {
        m_laying.drop();
        emit nested();
        return;
    }
    const auto [found, isNew] = m_onBench.try_emplace(shown->film);
    FilmOnBench& bench = found->second;
    if (isNew)
        bench.wish = usualWish(*m_shop, *shown);
    const auto from = reckonedFrom(*m_shop, *shown, m_decals);
    if (!isNew && from == bench.reckonedFrom) {
        if (bench.isLaid) {
            emit nested();
            return;
        }
        if (isBeingLaid()) {
            emit beingLaid();
            return;
        }
    }
    const auto isGone = [&](DecalId id) {
        return std::ranges::find(shown->waiting, id) == shown->waiting.end();
    };
    std::erase_if(bench.wish.leftOut, isGone);
    std::erase_if(bench.wish.pins, [&](const auto& pin) { return isGone(pin.first); });
    if (bench.firstRoll && !mayComeFirst(*bench.firstRoll))
        bench.firstRoll.reset();
    bench.reckonedFrom = from;
    nestAgain();
}

// At once where that is soon done, else in the background.
void BenchModel::nestAgain() {
    m_laying.drop();
    FilmOnBench& bench = own();
    bench.wish.rolls.clear();
    if (bench.firstRoll) {
        bench.wish.rolls.push_back(*bench.firstRoll);
        for (const RollOffer& offer : film()->rolls)
            if (offer.mayBeUsed && offer.roll != *bench.firstRoll)
                bench.wish.rolls.push_back(offer.roll);
    }
    bench.isSearched = false;
    bench.seed = 1;
    bench.withoutPins.reset();
    if (isSoonLaid(film()->waiting.size() - bench.wish.leftOut.size(), bench.wish.pins.size())) {
        takeFirst(firstLayout(*m_shop, *film(), bench.wish));
        return;
    }
    bench.isLaid = false;
    takeAwayWhatIsGone();
    m_laying.begin(
        [shop = m_shop, film = *film(), wish = bench.wish](auto& reporter) {
            return firstLayout(*shop, film, wish, [&] { return reporter.shouldStop(); });
        },
        [this](const FirstLayout& layout) { takeFirst(layout); });
    emit beingLaid();
}

void BenchModel::takeFirst(const FirstLayout& layout) {
    FilmOnBench& bench = own();
    bench.problem = layout.laid.ok() ? Sentence{} : layout.laid.error().message;
    bench.laid = layout.laid.ok() ? *layout.laid : FilmNests{};
    // A pin that could not be kept is let go.
    std::erase_if(bench.wish.pins, [&](const auto& pin) {
        const NestedDecal* lies = lying(pin.first);
        return !lies || !lies->isPinned;
    });
    bench.withoutPins = hasPins() ? layout.withoutPins : std::nullopt;
    bench.isLaid = true;
    keepChosen();
    emit nested();
}

// Of what lay there before: decals that wait no more or are left out, and rolls that are gone.
void BenchModel::takeAwayWhatIsGone() {
    FilmOnBench& bench = own();
    const std::set<DecalId> waiting(film()->waiting.begin(), film()->waiting.end());
    for (Nest& nest : bench.laid.nests)
        std::erase_if(nest.decals, [&](const NestedDecal& each) {
            return !waiting.contains(each.decal) || bench.wish.leftOut.contains(each.decal);
        });
    std::erase_if(bench.laid.nests, [&](const Nest& nest) {
        return nest.decals.empty() || !m_shop->facts.rolls.find(nest.roll);
    });
    bench.laid.lack.clear();
    bench.problem = {};
}

void BenchModel::keepChosen() {
    FilmOnBench& bench = own();
    if (bench.chosen && !lying(*bench.chosen))
        bench.chosen.reset();
}

// ── the decal at hand ─────────────────────────────────────────────────────────────────────────────────

DecalOnGarment BenchModel::decal(DecalId id) const {
    return decalIn(m_decals, id);
}

const Nest* BenchModel::nestOf(DecalId id) const {
    if (!film())
        return nullptr;
    const auto found =
        std::ranges::find_if(nests(), [&](const Nest& nest) { return nest.find(id) != nullptr; });
    return found == nests().end() ? nullptr : &*found;
}

const NestedDecal* BenchModel::lying(DecalId id) const {
    const Nest* nest = nestOf(id);
    return nest ? nest->find(id) : nullptr;
}

std::pair<int, int> BenchModel::amongAlike(DecalId id) const {
    const DecalOnGarment one = decal(id);
    int at = 0;
    int count = 0;
    for (const Nest& nest : nests())
        for (const NestedDecal& each : nest.decals) {
            if (!areAlike(one, decal(each.decal)))
                continue;
            ++count;
            if (each.decal == id)
                at = count;
        }
    return {at, count};
}

std::optional<DecalId> BenchModel::chosen() const {
    return film() ? onBench().chosen : std::nullopt;
}

void BenchModel::choose(DecalId id) {
    if (!film() || onBench().chosen == id || (!lying(id) && !isBeingLaid()))
        return;
    own().chosen = id;
    emit chosenChanged();
}

bool BenchModel::chooseNext(int step) {
    if (!film())
        return false;
    std::vector<DecalId> all;
    for (const Nest& nest : nests())
        for (const NestedDecal& each : nest.decals)
            all.push_back(each.decal);
    const auto at = std::ranges::find(all, onBench().chosen.value_or(DecalId{}));
    const auto count = static_cast<std::ptrdiff_t>(all.size());
    const std::ptrdiff_t before = at == all.end() ? (step > 0 ? -1 : count) : at - all.begin();
    const std::ptrdiff_t next = before + step;
    if (next < 0 || next >= count)
        return false;
    choose(all[static_cast<std::size_t>(next)]);
    return true;
}

// ── wishes ────────────────────────────────────────────────────────────────────────────────────────────

void BenchModel::leaveOut(DecalId id) {
    if (!lying(id))
        return;
    // The keyboard's place goes to the next decal, or to the one before.
    if (chosen() == id && !chooseNext(1))
        chooseNext(-1);
    own().wish.leftOut.insert(id);
    own().wish.pins.erase(id);
    nestAgain();
}

void BenchModel::putBack(DecalId id) {
    if (!film() || own().wish.leftOut.erase(id) == 0)
        return;
    nestAgain();
}

void BenchModel::putAllBack() {
    if (!film() || onBench().wish.leftOut.empty())
        return;
    own().wish.leftOut.clear();
    nestAgain();
}

void BenchModel::setGap(Millimetres gap) {
    gap.value = std::clamp<std::int64_t>(gap.value, 0, kWidestGap);
    if (!film() || onBench().wish.gap == gap)
        return;
    own().wish.gap = gap;
    nestAgain();
}

bool BenchModel::mayComeFirst(RollId roll) const {
    const auto& offers = film()->rolls;
    const auto found = std::ranges::find(offers, roll, &RollOffer::roll);
    return found != offers.end() && found->mayBeUsed;
}

void BenchModel::setFirstRoll(RollId roll) {
    if (!film() || onBench().firstRoll == roll || !mayComeFirst(roll))
        return;
    own().firstRoll = roll;
    nestAgain();
}

void BenchModel::layOnly(std::optional<RollId> roll, std::span<const DecalId> decals) {
    if (!film())
        return;
    const std::vector<DecalId>& waiting = film()->waiting;
    std::set<DecalId> leftOut(waiting.begin(), waiting.end());
    for (const DecalId id : decals)
        leftOut.erase(id);
    if (decals.empty() || leftOut.size() == waiting.size())
        leftOut = onBench().wish.leftOut;
    const auto firstRoll = roll && mayComeFirst(*roll) ? roll : onBench().firstRoll;
    if (firstRoll == onBench().firstRoll && leftOut == onBench().wish.leftOut)
        return;
    FilmOnBench& bench = own();
    std::erase_if(bench.wish.pins, [&](const auto& pin) { return leftOut.contains(pin.first); });
    bench.wish.leftOut = std::move(leftOut);
    bench.firstRoll = firstRoll;
    nestAgain();
}

bool BenchModel::keepsOffcut(RollId roll, const FilmArea& offcut) const {
    return std::ranges::find(onBench().thrownAway, std::pair{roll, offcut}) == onBench().thrownAway.end();
}

void BenchModel::setKeepsOffcut(RollId roll, const FilmArea& offcut, bool keeps) {
    if (keepsOffcut(roll, offcut) == keeps)
        return;
    if (keeps)
        std::erase(own().thrownAway, std::pair{roll, offcut});
    else
        own().thrownAway.emplace_back(roll, offcut);
    emit offcutsChanged();
}

void BenchModel::markSearched() {
    if (film())
        own().isSearched = true;
}

void BenchModel::searchOtherwise() {
    if (film())
        ++own().seed;
}

} // namespace holdfast::app

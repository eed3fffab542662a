// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/cut_length.h"
#include "core/press/stage.h"
#include "db/actions/film_actions.h"
#include "db/actions/order_actions.h"
#include "db/actions/press_actions.h"
#include "db/demo/demo_work.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <array>

namespace holdfast::db::demo {
namespace {

constexpr Seconds kWeedingEach{70};

// One garment with the facts of its order.
struct InHand {
    ShopFacts facts;
    const Garment* garment = nullptr;
    Route route;
};

ShopFacts factsOf(Script& script, std::int64_t number) {
    const std::array orders{script.named.orders.at(number)};
    return loadFactsOf(script.shop().connection(), orders);
}

InHand takeInHand(Script& script, Piece piece) {
    InHand hand;
    hand.facts = factsOf(script, piece.order);
    const auto garments = hand.facts.garmentsOf(script.named.orders.at(piece.order));
    hand.garment = garments.at(static_cast<std::size_t>(piece.letter - 'a'));
    hand.route = routeOf(hand.facts, *hand.garment);
    return hand;
}

// Does the steps from one on, until the one of this key is open; to the end where there is none.
void step(Script& script, const InHand& hand, std::size_t from, const std::string& untilKey = {}) {
    for (std::size_t at = from; at < hand.route.steps.size(); ++at) {
        if (hand.route.steps[at].key == untilKey)
            return;
        script.wait(hand.route.steps[at].total());
        done(finishStep(script.shop(), hand.garment->id, hand.route));
    }
}

const FilmRoll& rollFor(const ShopFacts& facts, FilmId film, std::span<const Decal* const> decals) {
    for (const FilmRoll& roll : facts.rolls)
        if (roll.film == film && roll.state == RollState::OnShelf &&
            fitOnto(decals, facts.films.at(film), roll.width, roll.left, facts.settings))
            return roll;
    throw Stopped{
        plainError(said("No roll of {film} has enough left.", {{"film", facts.films.at(film).name()}}))};
}

} // namespace

GarmentId Bench::garment(Piece piece) {
    return takeInHand(m_script, piece).garment->id;
}

std::vector<Piece> Bench::piecesOf(std::int64_t order) {
    std::vector<Piece> pieces;
    const std::size_t count = factsOf(m_script, order).garments.size();
    for (std::size_t at = 0; at < count; ++at)
        pieces.push_back({order, static_cast<char>('a' + at)});
    return pieces;
}

void Bench::cut(const std::vector<Piece>& pieces, std::optional<int> roll) {
    std::vector<OrderId> orders;
    std::vector<GarmentId> garments;
    for (const Piece& piece : pieces) {
        orders.push_back(m_script.named.orders.at(piece.order));
        garments.push_back(garment(piece));
    }
    const ShopFacts facts = loadFactsOf(m_script.shop().connection(), orders);
    std::map<FilmId, std::vector<const Decal*>> byFilm;
    for (const GarmentId id : garments)
        for (const Decal& decal : facts.garments.at(id).decals)
            if (!decal.isCut())
                byFilm[decal.film].push_back(&decal);
    for (const auto& [film, decals] : byFilm) {
        const FilmRoll& from =
            roll ? facts.rolls.at(m_script.named.rolls.at(*roll)) : rollFor(facts, film, decals);
        std::vector<DecalId> ids;
        for (const Decal* decal : decals)
            ids.push_back(decal->id);
        const Millimetres length = nestedLength(decals, facts.films.at(film), from.width, facts.settings);
        done(cutDecals(m_script.shop(), from.id, ids, length, m_script.now()));
        m_script.wait(kWeedingEach * static_cast<std::int64_t>(ids.size()));
    }
}

void Bench::press(Piece piece) {
    const InHand hand = takeInHand(m_script, piece);
    done(takeUp(m_script.shop(), hand.garment->id, hand.route, m_script.now()));
    step(m_script, hand, 0);
}

void Bench::pressUntil(Piece piece, const std::string& stepKey, LocalTime opens) {
    const InHand hand = takeInHand(m_script, piece);
    Seconds before{0};
    for (const RouteStep& each : hand.route.steps) {
        if (each.key == stepKey)
            break;
        before += each.total();
    }
    if (m_script.now().local() > opens - before)
        throw Stopped{plainError(said("{order}-{letter} comes too late: its {step} was to open at {time}.",
                                      {{"order", Numeral{piece.order}},
                                       {"letter", piece.letter},
                                       {"step", stepKey},
                                       {"time", isoLocalMinute(opens)}}))};
    m_script.waitUntil(opens - before);
    done(takeUp(m_script.shop(), hand.garment->id, hand.route, m_script.now()));
    step(m_script, hand, 0, stepKey);
}

void Bench::finish(Piece piece) {
    const InHand hand = takeInHand(m_script, piece);
    const Progress progress = progressOf(hand.facts, *hand.garment, hand.route);
    const RouteStep& open = hand.route.steps.at(*progress.underway);
    m_script.waitUntil(m_script.now().toLocal(*progress.underwaySince + open.total()));
    done(finishStep(m_script.shop(), hand.garment->id, hand.route));
    step(m_script, hand, *progress.underway + 1);
}

void Bench::spoil(Piece piece, const std::string& cause) {
    const InHand hand = takeInHand(m_script, piece);
    done(takeUp(m_script.shop(), hand.garment->id, hand.route, m_script.now()));
    step(m_script, hand, 0, "cool-1");
    done(markSpoiled(m_script.shop(), hand.garment->id, cause));
}

void Bench::handOver(std::int64_t number) {
    const OrderId order = m_script.named.orders.at(number);
    const Money owed = factsOf(m_script, number).orders.at(order).owed();
    if (owed > Money{})
        done(moveMoney(m_script.shop(), order, MoneyKind::Payment, owed,
                       number % 2 == 0 ? PaidHow::Cash : PaidHow::Card));
    m_script.wait(Seconds{45});
    done(db::handOver(m_script.shop(), order, m_script.now()));
}

} // namespace holdfast::db::demo

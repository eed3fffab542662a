// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/promised_load.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

namespace holdfast {

namespace {

bool isLetThroughUnwashed(const ShopFacts& facts, const Garment& garment) {
    return std::ranges::any_of(facts.waiversOf(garment.id), [&](const Waiver& waiver) {
        return waiver.attempt == garment.attempt && waiver.rule == Rule::BlankUnwashed;
    });
}

bool isToBeWashed(const ShopFacts& facts, const Garment& garment) {
    if (!facts.styleOf(garment).washedFirst() || isLetThroughUnwashed(facts, garment))
        return false;
    const BlankLot* lot = garment.lot ? facts.lots.find(*garment.lot) : nullptr;
    const WashLoad* load = lot ? facts.lastLoadOf(*lot) : nullptr;
    return !load || load->leftSoftener();
}

// A blank that is still to be bought was ordered when its garment was.
LocalTime blankThere(const ShopFacts& facts, const Garment& garment, const Now& now) {
    if (garment.lot)
        return now.local();
    constexpr Days kLongestLead{366};
    const Days lead = std::clamp(facts.settings.blankLeadTime, Days{0}, kLongestLead);
    return LocalTime{dateOf(now.toLocal(facts.orderOf(garment).takenAt)) + lead};
}

class Load {
public:
    explicit Load(const ReckonedShop& shop)
        : m_shop(shop) {}

    void add(const Garment& garment, const Assessment& assessment) {
        const Order& order = m_shop.facts.orderOf(garment);
        const Seconds pressing = pressTime(assessment.route, assessment.progress.finished);
        m_promised.work.push_back(
            {m_shop.now.later(order.promised, -assessment.route.restAfter), pressing + cutting(garment)});
        m_promised.longestGarment = std::max(m_promised.longestGarment, pressing);
        if (!assessment.progress.hasBegun() && isToBeWashed(m_shop.facts, garment))
            m_washes.push_back({&garment, &order});
    }

    Promised taken() {
        std::ranges::sort(m_washes, {}, [](const ToWash& wash) {
            return std::tuple{wash.order->promised, wash.order->number, wash.garment->position,
                              wash.garment->id};
        });
        for (const ToWash& wash : m_washes)
            m_promised.washes.push_back({blankThere(m_shop.facts, *wash.garment, m_shop.now),
                                         m_shop.facts.styleOf(*wash.garment).weight});
        addFilm();
        return std::move(m_promised);
    }

private:
    struct ToWash {
        const Garment* garment = nullptr;
        const Order* order = nullptr;
    };

    // The garments of an order are cut together: only the first in a film brings the cut itself.
    Seconds cutting(const Garment& garment) {
        Seconds work{0};
        for (const DecalToCut& decal : decalsToCut(m_shop, garment)) {
            const bool isFirst = m_cuts.emplace(garment.order, decal.film).second;
            work += isFirst ? cuttingTime(std::span{&decal, 1}, m_shop.facts.settings)
                            : weedingTime(decal, m_shop.facts.settings);
        }
        return work;
    }

    void addFilm() {
        for (const RollForecast& forecast : m_shop.allotment.useFirst) {
            if (!forecast.mayBeUsed)
                continue;
            const FilmRoll& roll = m_shop.facts.rolls.at(forecast.roll);
            m_promised.film.push_back({roll.film, roll.width, forecast.left - forecast.allotted,
                                       m_shop.conditions.at(roll.id).useBy});
        }
    }

    const ReckonedShop& m_shop;
    Promised m_promised;
    std::vector<ToWash> m_washes;
    std::set<std::pair<OrderId, FilmId>> m_cuts;
};

} // namespace

Seconds pressTime(const Route& route, std::size_t fromStep) {
    Seconds work{0};
    for (std::size_t step = fromStep; step < route.steps.size(); ++step)
        work += route.steps[step].attended + route.steps[step].platen;
    return work;
}

std::vector<DecalToCut> decalsToCut(const ReckonedShop& shop, const Garment& garment) {
    // A roll that may not be used is no film: another one is waited for.
    const auto hasFilm = [&](const Decal& decal) {
        const auto roll = shop.allotment.rollOf.find(decal.id);
        const RollForecast* forecast =
            roll == shop.allotment.rollOf.end() ? nullptr : shop.allotment.forecast(roll->second);
        return forecast && forecast->mayBeUsed;
    };
    std::vector<DecalToCut> decals;
    for (const Decal& decal : garment.decals) {
        if (!decal.isCut())
            decals.push_back({decal.film, decal.width, decal.height,
                              std::holds_alternative<Wording>(decal.content), hasFilm(decal)});
    }
    return decals;
}

Promised promisedLoad(const ReckonedShop& shop, std::optional<OrderId> except) {
    Load load{shop};
    for (const auto& [id, assessment] : shop.assessments) {
        const Garment* garment = shop.facts.garments.find(id);
        if (!garment || garment->handedOverAt || garment->order == except || assessment.progress.isPressed())
            continue;
        if (shop.facts.orderOf(*garment).state == OrderState::Confirmed)
            load.add(*garment, assessment);
    }
    return load.taken();
}

} // namespace holdfast

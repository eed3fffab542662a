// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fairs/fair_sales.h"

#include "core/orders/order_sum.h"
#include "core/shop/garment_cost.h"

#include <algorithm>
#include <map>
#include <set>

namespace holdfast {

namespace {

void add(Cost& sum, const Cost& cost) {
    sum.blank += cost.blank;
    sum.film += cost.film;
    sum.work += cost.work;
    sum.overhead += cost.overhead;
}

void add(Earned& earned, const FairOrder& order) {
    ++earned.orders;
    earned.garments += std::ssize(order.garments);
    earned.paid += order.paid;
    for (const SoldGarment& garment : order.garments) {
        earned.ordered += garment.price;
        add(earned.cost, garment.cost);
    }
}

SoldGarment asSold(const ShopFacts& facts, const Garment& garment) {
    Garment priced = garment;
    std::erase_if(priced.decals, [&](const Decal& decal) { return !facts.films.find(decal.film); });
    return {garment.style, garment.size, garment.colour, garment.price,
            garmentCost(facts, priced, routeOf(facts, priced))};
}

// Which fair of the list an order belongs to, as fairOf finds it among fewer.
class FairsByName {
public:
    explicit FairsByName(std::span<const Fair> fairs) {
        for (const Fair& fair : fairs)
            m_fairs[fair.name].push_back(&fair);
    }

    const Fair* of(const FairOrder& order) const {
        const auto named = m_fairs.find(order.place);
        if (named == m_fairs.end())
            return nullptr;
        const auto on =
            std::ranges::find_if(named->second, [&](const Fair* fair) { return fair->isOn(order.on); });
        return on == named->second.end() ? nullptr : *on;
    }

private:
    std::map<std::string, std::vector<const Fair*>, std::less<>> m_fairs;
};

} // namespace

void priceAsEarned(FairOrder& order) {
    if (order.lines.empty() && order.tax.kind == TaxKind::None)
        return;
    std::vector<Money> prices;
    for (const SoldGarment& garment : order.garments)
        prices.push_back(garment.price);
    const auto earned = earnedBy(prices, sumOf(prices, order.lines, order.tax));
    for (std::size_t at = 0; at < earned.size(); ++at)
        order.garments[at].price = earned[at];
}

std::map<OrderId, FairOrder> fairOrders(const ShopFacts& facts, LocalDate from, const Now& now) {
    std::map<OrderId, FairOrder> orders;
    for (const Order& order : facts.orders) {
        const LocalDate on = dateOf(now.toLocal(order.takenAt));
        const bool counts = order.state == OrderState::Confirmed || order.state == OrderState::HandedOver;
        if (counts && on >= from && order.takenAtPlace != kAtNoFair)
            orders[order.id] = {order.takenAtPlace, on, order.paid, {}, order.lines, order.tax};
    }
    for (const Garment& garment : facts.garments)
        if (const auto order = orders.find(garment.order); order != orders.end())
            order->second.garments.push_back(asSold(facts, garment));
    for (auto& [id, order] : orders)
        priceAsEarned(order);
    return orders;
}

std::optional<Money> Earned::leftAnHour() const {
    if (!fair)
        return std::nullopt;
    return divided(left(), 60, fair->hoursWorked().count(), Rounding::HalfEven);
}

std::vector<Earned> earnedAtFairs(std::span<const FairOrder> orders, std::span<const Fair> fairs,
                                  LocalDate from, LocalDate today) {
    std::map<FairId, Earned> listed;
    for (const Fair& fair : fairs) {
        if (fair.firstDay < from || fair.firstDay > today)
            continue;
        Earned& earned = listed[fair.id];
        earned.fair = fair;
        earned.place = fair.name;
        earned.days = fair.days();
    }
    const FairsByName byName{fairs};
    std::map<std::string, Earned> elsewhere;
    std::map<std::string, std::set<LocalDate>> days;
    for (const FairOrder& order : orders) {
        if (const Fair* fair = byName.of(order)) {
            if (const auto at = listed.find(fair->id); at != listed.end())
                add(at->second, order);
            continue;
        }
        Earned& place = elsewhere[order.place];
        place.place = order.place;
        days[order.place].insert(order.on);
        place.days = std::ssize(days[order.place]);
        add(place, order);
    }
    std::vector<Earned> earned;
    for (auto& [id, fair] : listed)
        earned.push_back(std::move(fair));
    std::ranges::stable_sort(earned, std::ranges::greater{},
                             [](const Earned& each) { return each.fair->firstDay; });
    for (auto& [name, place] : elsewhere)
        earned.push_back(std::move(place));
    return earned;
}

} // namespace holdfast

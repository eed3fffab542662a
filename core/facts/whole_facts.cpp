// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/whole_facts.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

constexpr Phrase kOrderLeftOut = phrase("The order is left out.");

template <class Thing, class Stays>
void keepOnly(Roster<Thing>& roster, Stays&& stays) {
    if (std::ranges::all_of(roster, stays))
        return;
    std::vector<Thing> kept;
    std::ranges::copy_if(roster, std::back_inserter(kept), stays);
    roster = Roster{std::move(kept)};
}

template <class Thing, class Stays>
void keepOnly(std::vector<Thing>& things, Stays&& stays) {
    std::erase_if(things, [&](const Thing& thing) { return !stays(thing); });
}

class Completing {
public:
    Completing(ShopFacts& facts, const std::set<OrderId>& broken)
        : m_facts(facts)
        , m_leftOut(broken) {}

    void run() {
        leaveOutRolls();
        leaveOutLots();
        for (const Order& order : m_facts.orders)
            if (m_facts.customers.find(order.customer) == nullptr)
                leaveOut(order, said("Its customer cannot be read."));
        for (const Garment& garment : m_facts.garments)
            lookAt(garment);
        for (const StepRecord& step : m_facts.steps)
            if (step.press && m_facts.presses.find(*step.press) == nullptr)
                if (const Garment* garment = m_facts.garments.find(step.garment))
                    leaveOut(*garment, said("The press of a step cannot be read."));
        if (!m_leftOut.empty())
            takeOutOrders();
    }

private:
    void leaveOutRolls() {
        keepOnly(m_facts.rolls, [this](const FilmRoll& roll) {
            if (m_facts.films.find(roll.film) != nullptr)
                return true;
            m_facts.unread.push_back({"film_roll", std::to_string(roll.id.value),
                                      said("Roll {roll}", {{"roll", roll.label()}}),
                                      said("Its film cannot be read."), said("The roll is left out.")});
            return false;
        });
    }

    Sentence whatLotLacks(const BlankLot& lot) const {
        const BlankStyle* style = m_facts.styles.find(lot.style);
        if (style == nullptr)
            return said("Its style cannot be read.");
        if (style->colour(lot.colour) == nullptr)
            return said("Its colour cannot be read.");
        return lot.lastLoad && m_facts.loads.find(*lot.lastLoad) == nullptr ? said("Its wash cannot be read.")
                                                                            : Sentence{};
    }

    Sentence lotNamed(const BlankLot& lot) const {
        const BlankStyle* style = m_facts.styles.find(lot.style);
        return style != nullptr
                   ? said("A lot of {style}, {size}", {{"style", style->name}, {"size", lot.size}})
                   : said("A lot of {size}", {{"size", lot.size}});
    }

    void leaveOutLots() {
        keepOnly(m_facts.lots, [this](const BlankLot& lot) {
            Sentence why = whatLotLacks(lot);
            if (why.empty())
                return true;
            m_facts.unread.push_back({"blank_lot", std::to_string(lot.id.value), lotNamed(lot),
                                      std::move(why), said("The lot is left out.")});
            return false;
        });
    }

    void lookAt(const Garment& garment) {
        if (m_facts.orders.find(garment.order) == nullptr)
            return;
        if (const Sentence why = whatIsMissingOf(m_facts, garment); !why.empty())
            leaveOut(garment, why);
    }

    void leaveOut(const Garment& garment, const Sentence& why) {
        if (const Order* order = m_facts.orders.find(garment.order))
            leaveOut(*order, why);
    }

    // Once each, for the first reason found.
    void leaveOut(const Order& order, const Sentence& why) {
        if (!m_leftOut.insert(order.id).second)
            return;
        m_facts.unread.push_back({"shop_order", std::to_string(order.id.value), orderNamed(m_facts, order),
                                  why, kOrderLeftOut, order.id});
    }

    void takeOutOrders() {
        const auto stays = [this](OrderId order) { return !m_leftOut.contains(order); };
        keepOnly(m_facts.orders, [&](const Order& order) { return stays(order.id); });
        keepOnly(m_facts.garments, [&](const Garment& garment) {
            return stays(garment.order) && m_facts.orders.find(garment.order) != nullptr;
        });
        const auto isOfAGarment = [this](const auto& row) {
            return m_facts.garments.find(row.garment) != nullptr;
        };
        keepOnly(m_facts.steps, isOfAGarment);
        keepOnly(m_facts.waivers, isOfAGarment);
        keepOnly(m_facts.spoils, isOfAGarment);
    }

    ShopFacts& m_facts;
    std::set<OrderId> m_leftOut;
};

} // namespace

Sentence whatIsMissingOf(const ShopFacts& facts, const Garment& garment) {
    const BlankStyle* style = facts.styles.find(garment.style);
    if (style == nullptr)
        return said("The style of a garment cannot be read.");
    if (style->colour(garment.colour) == nullptr)
        return said("The colour of a garment cannot be read.");
    if (garment.lot && facts.lots.find(*garment.lot) == nullptr)
        return said("The lot of a garment’s blank cannot be read.");
    for (const Decal& decal : garment.decals) {
        if (facts.films.find(decal.film) == nullptr)
            return said("The film of a decal cannot be read.");
        if (decal.cutFrom && facts.rolls.find(*decal.cutFrom) == nullptr)
            return said("The roll that a decal was cut from cannot be read.");
    }
    return {};
}

Sentence orderNamed(const ShopFacts& facts, const Order& order) {
    const Customer* customer = facts.customers.find(order.customer);
    const NamedValue number{"order", Numeral{order.number}};
    return customer != nullptr ? said("Order {order} of {customer}", {number, {"customer", customer->name}})
                               : said("Order {order}", {number});
}

void leaveOutIncomplete(ShopFacts& facts, const std::set<OrderId>& broken) {
    Completing{facts, broken}.run();
}

} // namespace holdfast

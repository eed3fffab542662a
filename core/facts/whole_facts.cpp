// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/whole_facts.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

constexpr const char* kOrderLeftOut = "The order is left out.";

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
                leaveOut(order, "Its customer cannot be read.");
        for (const Garment& garment : m_facts.garments)
            lookAt(garment);
        for (const StepRecord& step : m_facts.steps)
            if (step.press && m_facts.presses.find(*step.press) == nullptr)
                if (const Garment* garment = m_facts.garments.find(step.garment))
                    leaveOut(*garment, "The press of a step cannot be read.");
        if (!m_leftOut.empty())
            takeOutOrders();
    }

private:
    void leaveOutRolls() {
        keepOnly(m_facts.rolls, [this](const FilmRoll& roll) {
            if (m_facts.films.find(roll.film) != nullptr)
                return true;
            m_facts.unread.push_back({"film_roll", std::to_string(roll.id.value), "Roll " + roll.label(),
                                      "Its film cannot be read.", "The roll is left out."});
            return false;
        });
    }

    std::string whatLotLacks(const BlankLot& lot) const {
        const BlankStyle* style = m_facts.styles.find(lot.style);
        if (style == nullptr)
            return "Its style cannot be read.";
        if (style->colour(lot.colour) == nullptr)
            return "Its colour cannot be read.";
        return lot.lastLoad && m_facts.loads.find(*lot.lastLoad) == nullptr ? "Its wash cannot be read." : "";
    }

    void leaveOutLots() {
        keepOnly(m_facts.lots, [this](const BlankLot& lot) {
            std::string why = whatLotLacks(lot);
            if (why.empty())
                return true;
            const BlankStyle* style = m_facts.styles.find(lot.style);
            m_facts.unread.push_back({"blank_lot", std::to_string(lot.id.value),
                                      "A lot of " + (style != nullptr ? style->name + ", " : "") + lot.size,
                                      std::move(why), "The lot is left out."});
            return false;
        });
    }

    void lookAt(const Garment& garment) {
        if (m_facts.orders.find(garment.order) == nullptr)
            return;
        if (const std::string why = whatIsMissingOf(m_facts, garment); !why.empty())
            leaveOut(garment, why);
    }

    void leaveOut(const Garment& garment, const std::string& why) {
        if (const Order* order = m_facts.orders.find(garment.order))
            leaveOut(*order, why);
    }

    // Once each, for the first reason found.
    void leaveOut(const Order& order, const std::string& why) {
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

std::string whatIsMissingOf(const ShopFacts& facts, const Garment& garment) {
    const BlankStyle* style = facts.styles.find(garment.style);
    if (style == nullptr)
        return "The style of a garment cannot be read.";
    if (style->colour(garment.colour) == nullptr)
        return "The colour of a garment cannot be read.";
    if (garment.lot && facts.lots.find(*garment.lot) == nullptr)
        return "The lot of a garment’s blank cannot be read.";
    for (const Decal& decal : garment.decals) {
        if (facts.films.find(decal.film) == nullptr)
            return "The film of a decal cannot be read.";
        if (decal.cutFrom && facts.rolls.find(*decal.cutFrom) == nullptr)
            return "The roll that a decal was cut from cannot be read.";
    }
    return "";
}

std::string orderNamed(const ShopFacts& facts, const Order& order) {
    const Customer* customer = facts.customers.find(order.customer);
    return "Order " + std::to_string(order.number) + (customer != nullptr ? " of " + customer->name : "");
}

void leaveOutIncomplete(ShopFacts& facts, const std::set<OrderId>& broken) {
    Completing{facts, broken}.run();
}

} // namespace holdfast

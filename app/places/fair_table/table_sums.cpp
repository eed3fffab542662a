// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/table_sums.h"

#include "core/shop/garment_cost.h"
#include "core/shop/promised_load.h"
#include "core/trade/limits.h"

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr std::size_t kMostSoonerColours = 3;

// Cost and price of one garment with its first `decals` decals.
struct Priced {
    Cost cost;
    Money price;
    Seconds pressTime{0};
};

Priced pricedWith(const ShopFacts& facts, GarmentDraft draft, std::size_t decals) {
    draft.decals.resize(decals);
    std::erase_if(draft.decals, [&](const DecalDraft& decal) { return !facts.films.find(decal.film); });
    const Garment garment = asGarment(draft);
    const Route route = routeOf(facts, garment);
    Priced priced;
    priced.cost = garmentCost(facts, garment, route);
    priced.price = priceOf(priced.cost, facts.settings);
    priced.pressTime = pressTime(route);
    return priced;
}

GarmentSums sumsOf(const ShopFacts& facts, const TableGarment& garment) {
    GarmentSums sums;
    sums.parts.resize(garment.decals.size() + 1);
    const BlankStyle* style = facts.styles.find(garment.style);
    if (!style)
        return sums;
    const GarmentDraft draft = garmentDraft(garment);
    for (std::size_t decals = 0; decals <= draft.decals.size(); ++decals) {
        const Priced priced = pricedWith(facts, draft, decals);
        sums.parts[decals] = priced.price - sums.price;
        sums.price = priced.price;
        sums.cost = priced.cost;
        sums.pressTime = priced.pressTime;
    }
    return sums;
}

std::vector<DecalToCut> decalsOf(const TableGarment& garment, const ShopFacts& facts) {
    std::vector<DecalToCut> decals;
    for (const TableDecal& each : garment.decals)
        if (facts.films.find(each.decal.film))
            decals.push_back({each.decal.film, each.decal.width, each.decal.height,
                              std::holds_alternative<Wording>(each.decal.content)});
    return decals;
}

// A round amount, as an example.
Money tenUnits(const Currency& currency) {
    Money ten{10};
    for (int place = 0; place < currency.exponent; ++place)
        ten = ten * 10;
    return ten;
}

void reckonPaidNow(const TableDraft& draft, const ShopSettings& settings, TableSums& sums) {
    if (settings.depositPercent > 0)
        sums.depositAsked = depositDue(sums.total, settings);
    if (trimmed(draft.paidNow).empty())
        return;
    const auto typed = parseAmount(draft.paidNow, settings.currency);
    if (!typed || *typed < Money{})
        sums.depositError = fieldError(
            "deposit", said("An amount such as {amount}, 0 or more.",
                            {{"amount", plainAmount(tenUnits(settings.currency), settings.currency)}}));
    else if (*typed > sums.total)
        sums.depositError = fieldError("deposit", said("No more than the total of {amount}.",
                                                       {{"amount", Amount{sums.total, settings.currency}}}));
    else
        sums.deposit = *typed;
}

class PromiseAsker {
public:
    PromiseAsker(const TableDraft& draft, const ReckonedShop& shop, const BlankRailStock& stock,
                 const Promised& promised, TableSums& sums)
        : m_draft(draft)
        , m_shop(shop)
        , m_stock(stock)
        , m_promised(promised)
        , m_sums(sums) {}

    void ask() {
        const auto asked = askedGarments();
        if (asked.empty())
            return;
        const auto promise = promiseFor(asked, m_shop.facts, m_promised, m_shop.now);
        if (!promise.ok()) {
            m_sums.promiseLack = promise.error().message;
            return;
        }
        m_sums.promise = *promise;
        askSooner();
    }

private:
    std::vector<AskedGarment> askedGarments(ColourId instead = {}) {
        std::vector<AskedGarment> asked;
        for (std::size_t at = 0; at < m_draft.garments.size(); ++at) {
            const TableGarment& garment = m_draft.garments[at];
            const BlankStyle* style = m_shop.facts.styles.find(garment.style);
            if (!style)
                continue;
            const bool isInstead = instead.isSet() && at == m_draft.garmentAt;
            const BlankKind kind =
                m_stock.likeliest(*style, garment.size, isInstead ? instead : garment.colour);
            m_sums.promiseIsForLikeliest = m_sums.promiseIsForLikeliest || !garment.isBlankChosen();
            const AskedGarment one{kind.style, kind.size, kind.colour, decalsOf(garment, m_shop.facts),
                                   m_sums.garments[at].pressTime};
            asked.insert(asked.end(), static_cast<std::size_t>(garment.copies), one);
        }
        return asked;
    }

    // Another colour of the garment at hand that is washed already, if that makes the whole order sooner.
    void askSooner() {
        const TableGarment& garment = m_draft.garment();
        const BlankStyle* style = m_shop.facts.styles.find(garment.style);
        if (!style || !garment.isBlankChosen() ||
            m_stock.of({style->id, garment.size, garment.colour}).washed >= garment.copies)
            return;
        SoonerOption option;
        for (const Colour& colour : style->colours) {
            const BlankStock stock = m_stock.of({style->id, garment.size, colour.id});
            if (colour.id != garment.colour && stock.washed >= garment.copies &&
                option.colours.size() < kMostSoonerColours)
                option.colours.push_back(&colour);
        }
        if (option.colours.empty())
            return;
        const auto asked = askedGarments(option.colours.front()->id);
        const auto promise = promiseFor(asked, m_shop.facts, m_promised, m_shop.now);
        if (!promise.ok() || promise->readyAt >= m_sums.promise->readyAt)
            return;
        option.readyAt = promise->readyAt;
        m_sums.sooner = option;
    }

    const TableDraft& m_draft;
    const ReckonedShop& m_shop;
    const BlankRailStock& m_stock;
    const Promised& m_promised;
    TableSums& m_sums;
};

} // namespace

void TableReckoner::keepUp(const std::shared_ptr<const ReckonedShop>& shop) {
    if (m_shop == shop)
        return;
    m_shop = shop;
    m_stock = BlankRailStock{shop->facts};
    m_promised = promisedLoad(*shop);
}

const BlankRailStock& TableReckoner::stock(const std::shared_ptr<const ReckonedShop>& shop) {
    keepUp(shop);
    return m_stock;
}

TableSums TableReckoner::reckon(const TableDraft& draft, const std::shared_ptr<const ReckonedShop>& shop) {
    keepUp(shop);
    TableSums sums;
    for (const TableGarment& garment : draft.garments) {
        const GarmentSums& one = sums.garments.emplace_back(sumsOf(shop->facts, garment));
        sums.total += one.price * garment.copies;
        sums.floor += one.cost.total() * garment.copies;
    }
    reckonPaidNow(draft, shop->facts.settings, sums);
    PromiseAsker{draft, *shop, m_stock, m_promised, sums}.ask();
    sums.rolls = pickRolls(draft, *shop);
    return sums;
}

OrderDraft orderOf(const TableDraft& draft, const TableSums& sums, bool isQuotation) {
    OrderDraft order;
    order.customer = draft.customer;
    order.customerName = draft.customerName;
    order.customerPhone = draft.customerPhone;
    for (std::size_t at = 0; at < draft.garments.size(); ++at) {
        // A further garment that nothing was chosen for yet is no garment.
        if (draft.garments[at] == TableGarment{} && draft.garments.size() > 1)
            continue;
        GarmentDraft garment = garmentDraft(draft.garments[at]);
        garment.price = sums.garments[at].price;
        order.garments.insert(order.garments.end(), static_cast<std::size_t>(draft.garments[at].copies),
                              garment);
    }
    if (sums.promise)
        order.promised = sums.promise->readyAt;
    order.deposit = sums.deposit;
    order.depositHow = draft.paidHow.value_or(PaidHow::Cash);
    order.isConfirmed = !isQuotation;
    order.isQuotation = isQuotation;
    return order;
}

} // namespace holdfast::app

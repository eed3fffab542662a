// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/table_sums.h"

#include "app/places/fair_table/opened_order.h"
#include "core/shop/garment_cost.h"
#include "core/shop/promise_again.h"
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
    priced.price = askedPriceOf(facts, garment, priced.cost);
    priced.pressTime = pressTime(route);
    return priced;
}

GarmentSums reckonedSums(const ShopFacts& facts, const TableGarment& garment) {
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

// What was agreed for a garment stands; a change of it costs, or saves, what it would have at the present
// prices.
GarmentSums sumsOf(const ShopFacts& facts, const TableDraft& draft, const TableGarment& garment) {
    GarmentSums sums = reckonedSums(facts, garment);
    const TableGarment* before = asOpened(draft, garment);
    const GarmentDraft* taken = before ? takenGarment(draft.opened->before, *garment.taken) : nullptr;
    sums.usual = sums.price;
    if (sums.parts.empty())
        return sums;
    if (taken)
        sums.usual = std::max(Money{}, taken->price + sums.price - reckonedSums(facts, *before).price);
    const Money price = garment.priceByHand.value_or(sums.usual);
    sums.parts.front() = sums.parts.front() + (price - sums.price);
    sums.price = price;
    return sums;
}

void addDecalToCut(const TableDecal& table, const ShopFacts& facts, std::vector<DecalToCut>& decals) {
    const DecalDraft& decal = table.decal;
    if (facts.films.find(decal.film))
        decals.push_back(
            {decal.film, decal.width, decal.height, std::holds_alternative<Wording>(decal.content)});
}

std::vector<DecalToCut> decalsOf(const TableGarment& garment, const ShopFacts& facts) {
    std::vector<DecalToCut> decals;
    for (const TableDecal& each : garment.decals)
        addDecalToCut(each, facts, decals);
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
    const Money paid = draft.opened ? draft.opened->order.paid : Money{};
    const bool isQuoted = draft.opened && draft.opened->before.isQuotation; // which takes no money
    sums.owed = isQuoted ? Money{} : sums.total - paid;
    if (settings.depositPercent > 0 && !isQuoted)
        sums.depositAsked = std::max(Money{}, depositDue(sums.total, settings) - paid);
    if (trimmed(draft.paidNow).empty())
        return;
    const auto typed = parseAmount(draft.paidNow, settings.currency);
    if (!typed || *typed < Money{})
        sums.depositError = fieldError(
            "deposit", said("An amount such as {amount}, 0 or more.",
                            {{"amount", plainAmount(tenUnits(settings.currency), settings.currency)}}));
    else if (*typed > std::max(Money{}, sums.owed))
        sums.depositError = fieldError(
            "deposit", draft.opened
                           ? said("No more than the {amount} owed.",
                                  {{"amount", Amount{std::max(Money{}, sums.owed), settings.currency}}})
                           : said("No more than the total of {amount}.",
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
        if (m_draft.opened && !isMoreToDo() && !m_draft.wantedOn) {
            standsAsPromised();
            return;
        }
        const auto asked = askedGarments();
        if (asked.empty()) {
            if (m_draft.opened)
                standsAsPromised(); // all of it is pressed
            return;
        }
        const auto promise = promiseFor(asked, m_shop.facts, m_promised, m_shop.now);
        if (!promise.ok()) {
            m_sums.promiseLack = promise.error().message;
            return;
        }
        m_sums.promise = *promise;
        if (m_draft.opened && !m_draft.wantedOn && promise->readyAt <= m_draft.opened->order.promised)
            standsAsPromised();
        askSooner();
        answerWanted();
    }

private:
    bool isMoreToDo() const {
        return std::ranges::any_of(m_draft.garments, [&](const TableGarment& garment) {
            return garment.style.isSet() && copiesToMake(m_draft, garment) > 0;
        });
    }

    void standsAsPromised() {
        m_sums.isAsPromised = true;
        if (!m_sums.promise)
            m_sums.promise.emplace();
        m_sums.promise->readyAt = m_draft.opened->order.promised;
    }

    // What was taken as it is: what is left to do of it.
    void addTaken(const TableGarment& garment, std::vector<AskedGarment>& asked) const {
        const Garment* taken = m_shop.facts.garments.find(*garment.taken);
        if (taken && !taken->handedOverAt && !m_shop.of(taken->id).progress.isPressed())
            asked.push_back(stillToDo(m_shop, *taken));
    }

    // What was taken and is to be otherwise: its own blank stays its own, and what is cut already may stay.
    AskedGarment changedOne(const TableGarment& garment, AskedGarment one) const {
        const Garment* taken = m_shop.facts.garments.find(*garment.taken);
        const GarmentDraft* before = takenGarment(m_draft.opened->before, *garment.taken);
        if (!taken || !before || garment.isMadeAgain)
            return one;
        if (blanksWanted(m_draft, garment) < garment.copies)
            one.lot = taken->lot;
        one.decals.clear();
        for (const TableDecal& each : garment.decals) {
            const auto was = std::ranges::find(before->decals, each.decal.taken, &DecalDraft::taken);
            const auto own = std::ranges::find_if(
                taken->decals, [&](const Decal& decal) { return decal.id == each.decal.taken; });
            const bool isCut = each.decal.taken && was != before->decals.end() &&
                               own != taken->decals.end() && own->isCut() &&
                               !isCutOtherwise(*was, each.decal);
            if (!isCut)
                addDecalToCut(each, m_shop.facts, one.decals);
        }
        return one;
    }

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
            if (asOpened(m_draft, garment)) {
                if (isAsTaken(m_draft, garment) && !isInstead)
                    addTaken(garment, asked);
                else
                    asked.push_back(changedOne(garment, one));
            }
            const int fresh = garment.copies - (asOpened(m_draft, garment) ? 1 : 0);
            asked.insert(asked.end(), static_cast<std::size_t>(fresh), one);
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

    void answerWanted() {
        if (!m_draft.wantedOn)
            return;
        using Answer = WantedDay::Answer;
        const WantedDay wanted =
            holdfast::answerWanted(m_shop.facts.settings, m_sums.promise->readyAt, *m_draft.wantedOn);
        m_sums.promise->readyAt = wanted.promised;
        m_sums.wanted = wanted;
        if (wanted.answer == Answer::Kept)
            m_sums.sooner.reset();
        else if (wanted.answer == Answer::TooSoon &&
                 (!m_sums.sooner || dateOf(m_sums.sooner->readyAt) > wanted.day))
            askOtherwise(wanted.day);
    }

    void askOtherwise(LocalDate day) {
        askWithADecalLess(day);
        if (m_sums.sooner && dateOf(m_sums.sooner->readyAt) <= day)
            return;
        const auto longer = longerDayFor(askedGarments(), m_shop.facts, m_promised, m_shop.now, day);
        if (longer)
            m_sums.sooner = SoonerOption{{}, longer->readyAt, {}, longer};
    }

    void askWithADecalLess(LocalDate day) {
        const TableGarment& garment = m_draft.garment();
        if (!garment.style.isSet() || garment.decals.size() < 2)
            return;
        for (std::size_t at = garment.decals.size(); at-- > 0;) {
            TableDraft fewer = m_draft;
            fewer.garment().decals.erase(fewer.garment().decals.begin() + static_cast<std::ptrdiff_t>(at));
            TableSums sums;
            for (const TableGarment& each : fewer.garments)
                sums.garments.push_back(reckonedSums(m_shop.facts, each));
            const auto asked = PromiseAsker{fewer, m_shop, m_stock, m_promised, sums}.askedGarments();
            const auto promise = promiseFor(asked, m_shop.facts, m_promised, m_shop.now);
            if (!promise.ok() || dateOf(promise->readyAt) > day)
                continue;
            m_sums.sooner = SoonerOption{{}, promise->readyAt, at, {}};
            return;
        }
    }

    const TableDraft& m_draft;
    const ReckonedShop& m_shop;
    const BlankRailStock& m_stock;
    const Promised& m_promised;
    TableSums& m_sums;
};

} // namespace

void TableReckoner::keepUp(const std::shared_ptr<const ReckonedShop>& shop, std::optional<OrderId> except) {
    if (m_shop == shop && m_except == except)
        return;
    m_shop = shop;
    m_except = except;
    m_stock = BlankRailStock{shop->facts};
    m_promised = promisedLoad(*shop, except);
}

const BlankRailStock& TableReckoner::stock(const std::shared_ptr<const ReckonedShop>& shop) {
    keepUp(shop, m_except);
    return m_stock;
}

TableSums TableReckoner::reckon(const TableDraft& draft, const std::shared_ptr<const ReckonedShop>& shop) {
    keepUp(shop, draft.opened ? std::optional{draft.opened->order.id} : std::nullopt);
    TableSums sums;
    std::vector<Money> prices;
    for (const TableGarment& garment : draft.garments) {
        const GarmentSums& one = sums.garments.emplace_back(sumsOf(shop->facts, draft, garment));
        prices.push_back(one.price);
        sums.floor += one.cost.total() * garment.copies;
    }
    sums.bill = billOf(draft, prices, shop->facts.settings, shop->now.today());
    sums.total = sums.bill.sum.total;
    sums.tax = draft.opened ? draft.opened->before.tax : shop->facts.settings.prices.tax;
    reckonPaidNow(draft, shop->facts.settings, sums);
    PromiseAsker{draft, *shop, m_stock, m_promised, sums}.ask();
    sums.rolls = pickRolls(draft, *shop);
    return sums;
}

namespace {

// The first copy of a garment that was taken keeps its ids; what nobody touched is exactly as it was.
void addGarments(const TableDraft& draft, const TableGarment& garment, Money price, OrderDraft& order) {
    GarmentDraft drafted = garmentDraft(garment);
    drafted.price = price;
    const bool wasTaken = asOpened(draft, garment) != nullptr;
    if (wasTaken)
        order.garments.push_back(
            isAsTaken(draft, garment) ? *takenGarment(draft.opened->before, *garment.taken) : drafted);
    if (wasTaken)
        order.garments.back().price = price;
    drafted.taken.reset();
    drafted.isMadeAgain = false;
    for (DecalDraft& decal : drafted.decals)
        decal.taken.reset();
    order.garments.insert(order.garments.end(), static_cast<std::size_t>(garment.copies - (wasTaken ? 1 : 0)),
                          drafted);
}

} // namespace

OrderDraft orderOf(const TableDraft& draft, const TableSums& sums, bool isQuotation) {
    OrderDraft order;
    order.customer = draft.customer;
    order.customerName = draft.customerName;
    order.customerPhone = draft.customerPhone;
    for (std::size_t at = 0; at < draft.garments.size(); ++at) {
        // A further garment that nothing was chosen for yet is no garment.
        if (draft.garments[at] == TableGarment{} && draft.garments.size() > 1)
            continue;
        addGarments(draft, draft.garments[at], sums.garments[at].price, order);
    }
    if (sums.promise)
        order.promised = sums.promise->readyAt;
    order.deposit = sums.deposit;
    order.depositHow = draft.paidHow.value_or(PaidHow::Cash);
    order.isConfirmed = draft.opened ? draft.opened->before.isConfirmed : !isQuotation;
    order.isQuotation = draft.opened ? draft.opened->before.isQuotation : isQuotation;
    order.note = trimmed(draft.note);
    order.lines = sums.bill.lines;
    order.tax = sums.tax;
    return order;
}

} // namespace holdfast::app

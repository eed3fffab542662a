// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/garments/placement_presets.h"
#include "core/shop/garment_cost.h"
#include "db/actions/order_actions.h"
#include "db/demo/demo_orders.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace holdfast::db::demo {
namespace {

// Width over height of each drawing's ink.
struct Drawing {
    std::string_view name;
    double aspect;
};
constexpr std::array kDrawings{Drawing{"boat", 0.952}, Drawing{"fish", 2.402},     Drawing{"heron", 0.727},
                               Drawing{"tern", 1.367}, Drawing{"samphire", 0.699}, Drawing{"thimble", 0.563},
                               Drawing{"waves", 1.004}};
constexpr double kLetterAspect = 0.64;
constexpr double kLettersToWidest = 7; // letters are a seventh of what is widest there

double aspectOf(const DecalPlan& plan) {
    if (!plan.artwork)
        return kLetterAspect * static_cast<double>(std::string_view{plan.words}.size());
    return std::ranges::find(kDrawings, plan.artwork, &Drawing::name)->aspect;
}

Millimetres rounded(double length) {
    return {std::llround(length)};
}

double usualWidth(const DecalPlan& plan, const PlacementPreset& preset) {
    if (plan.width.value > 0)
        return static_cast<double>(plan.width.value);
    const double wide = static_cast<double>(preset.wide.value),
                 tall = static_cast<double>(preset.tallest.value);
    if (plan.artwork)
        return std::min(wide, tall * aspectOf(plan));
    const double widest = static_cast<double>(preset.widest.value);
    return std::min(widest, std::min(45.0, widest / kLettersToWidest) * aspectOf(plan));
}

DecalDraft draftOf(const DecalPlan& plan, const BlankStyle& style, std::string_view size,
                   const Named& named) {
    const PlacementPreset preset =
        presetFor(style.outline, plan.placement, size).value_or(presetsFor(style.outline).front());
    DecalDraft draft;
    draft.film = named.films.at(plan.shade);
    if (plan.artwork)
        draft.content = Artwork{plan.artwork};
    else
        draft.content = Wording{plan.words, Face::BookSerif};
    draft.placement = preset.placement;
    const double width = usualWidth(plan, preset);
    draft.width = rounded(width);
    draft.height = rounded(width / aspectOf(plan));
    draft.below = plan.below.value_or(preset.below);
    draft.aside = preset.aside;
    draft.layer = plan.layer;
    return draft;
}

// As the fair table prices it.
Money priceOf(const ShopFacts& facts, const BlankStyle& style, const GarmentDraft& draft) {
    Garment garment;
    garment.style = style.id;
    garment.size = draft.size;
    for (const DecalDraft& each : draft.decals) {
        Decal decal;
        decal.id = DecalId{static_cast<std::int64_t>(garment.decals.size()) + 1};
        decal.film = each.film;
        decal.placement = each.placement;
        decal.below = each.below;
        decal.aside = each.aside;
        decal.width = each.width;
        decal.height = each.height;
        decal.layer = each.layer;
        decal.content = each.content;
        garment.decals.push_back(decal);
    }
    return holdfast::priceOf(garmentCost(facts, garment, routeOf(facts, garment)), facts.settings);
}

GarmentDraft draftOf(const GarmentPlan& plan, const ShopFacts& facts, const Named& named) {
    const BlankStyle& style = facts.styles.at(named.styles.at(plan.style));
    GarmentDraft draft;
    draft.style = style.id;
    draft.size = plan.size;
    draft.colour = std::ranges::find(style.colours, std::string_view{plan.colour}, &Colour::name)->id;
    for (const DecalPlan& decal : plan.decals)
        draft.decals.push_back(draftOf(decal, style, plan.size, named));
    draft.price = priceOf(facts, style, draft);
    return draft;
}

Money firstMoney(FirstMoney money, Money total, const ShopSettings& settings) {
    switch (money) {
    case FirstMoney::Usual:
        return depositDue(total, settings);
    case FirstMoney::None:
        return {};
    case FirstMoney::Thirty:
        return {3000};
    case FirstMoney::Ten:
        return {1000};
    case FirstMoney::All:
        return total;
    }
    return {};
}

// Nothing is promised for a day on which the shop is closed.
int firstOpenDay(const Script& script, const ShopSettings& settings, int day) {
    while (!settings.isOpenOn(script.day(day)))
        ++day;
    return day;
}

void take(Script& script, const OrderPlan& plan) {
    const ShopFacts facts = loadFactsOf(script.shop().connection(), {});
    OrderDraft draft;
    draft.customerName = plan.customer;
    draft.customerPhone = plan.phone;
    for (const GarmentPlan& garment : plan.garments)
        draft.garments.push_back(draftOf(garment, facts, script.named));
    draft.promised = script.time(firstOpenDay(script, facts.settings, plan.promisedDay), plan.promisedAt);
    if (!plan.isQuotation)
        draft.deposit = firstMoney(plan.money, draft.total(), facts.settings);
    draft.depositHow = plan.number % 3 == 0 ? PaidHow::Card : PaidHow::Cash;
    draft.isConfirmed = !plan.isQuotation;
    draft.isQuotation = plan.isQuotation;
    draft.note = plan.note;
    const OrderTaken taken = done(takeOrder(script.shop(), draft, script.now()));
    if (taken.number != plan.number)
        throw Stopped{plainError(said("Order {order} was given the number {number}.",
                                      {{"order", Numeral{plan.number}}, {"number", Numeral{taken.number}}}))};
    script.named.orders[taken.number] = taken.id;
}

DecalId decalOf(Script& script, std::int64_t number, int position) {
    const OrderId order = script.named.orders.at(number);
    const ShopFacts facts = loadFactsOf(script.shop().connection(), std::span{&order, 1});
    return facts.garmentsOf(order).at(static_cast<std::size_t>(position) - 1)->decals.front().id;
}

void cancel(Script& script, int day, std::int64_t number, const char* reason, Money refund) {
    script.at(day, clockAt(14, 30), [=, &script] {
        const OrderId order = script.named.orders.at(number);
        done(cancelOrder(script.shop(), order, reason));
        script.wait(Seconds{60});
        done(moveMoney(script.shop(), order, MoneyKind::Refund, refund, PaidHow::Cash));
    });
}

void writeAgreements(Script& script) {
    cancel(script, -50, 393, "moving house, no room for more shirts", {500});
    cancel(script, -14, 403, "bought another coat", {300});

    script.at(-25, clockAt(12, 15), [&script] {
        const OrderId order = script.named.orders.at(401);
        done(confirmQuotation(script.shop(), order));
        for (int position = 1; position <= 6; ++position)
            done(confirmWording(script.shop(), decalOf(script, 401, position), "by letter"));
        done(moveMoney(script.shop(), order, MoneyKind::Deposit, {4000}, PaidHow::Transfer));
    });
    script.at(-1, clockAt(12, 40),
              [&script] { done(rewordDecal(script.shop(), decalOf(script, 425, 2), "Wren")); });
    script.at(-1, clockAt(13, 5), [&script] {
        done(moveMoney(script.shop(), script.named.orders.at(423), MoneyKind::Payment, {2000},
                       PaidHow::Transfer));
    });
    // Moved, and then thought better of.
    script.at(0, clockAt(9, 15, 10), [&script] {
        done(movePromise(script.shop(), script.named.orders.at(418), script.time(2, clockAt(10, 30)),
                         script.now()));
    });
    script.at(0, clockAt(9, 15, 50), [&script] {
        if (const auto last = script.shop().lastUndoable())
            done(script.shop().undo(last->id));
    });
}

} // namespace

GarmentPlan garment(const char* style, const char* size, const char* colour, std::vector<DecalPlan> decals) {
    return {style, size, colour, std::move(decals)};
}

OrderPlan order(int number, int day, Seconds at, const char* customer, const char* phone, int promisedDay,
                Seconds promisedAt, std::vector<GarmentPlan> garments, FirstMoney money, bool isQuotation,
                const char* note) {
    return {number, day,         at,  customer, phone, promisedDay, promisedAt, std::move(garments),
            money,  isQuotation, note};
}

void writeOrders(Script& script) {
    for (const auto& orders : {earlierOrders(), openOrders()})
        for (const OrderPlan& plan : orders)
            script.at(plan.day, plan.at, [&script, plan] { take(script, plan); });
    writeAgreements(script);
}

} // namespace holdfast::db::demo

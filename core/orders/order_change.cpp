// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_change.h"

#include "core/orders/cutting_time.h"

#include <algorithm>

namespace holdfast {

namespace {

DecalDraft drafted(const Decal& decal) {
    return {decal.film,  decal.content, decal.placement, decal.below, decal.aside,
            decal.width, decal.height,  decal.layer,     decal.id};
}

GarmentDraft drafted(const Garment& garment) {
    GarmentDraft draft{garment.style, garment.size, garment.colour, garment.price, {}, garment.id};
    for (const Decal& decal : garment.decals)
        draft.decals.push_back(drafted(decal));
    return draft;
}

// At the press now, or no longer here: no draft changes it.
Result<Done> checkMayBeTouched(const Garment& garment, const ShopFacts& facts, bool isMadeAgain) {
    const std::string label = facts.labelOf(garment);
    if (garment.handedOverAt)
        return fieldError("garments",
                          said("{garment} is handed over; it stays as it is.", {{"garment", label}}));
    const auto steps = facts.stepsOf(garment);
    if (std::ranges::any_of(steps, [](const StepRecord& step) { return !step.finishedAt; }))
        return fieldError("garments",
                          said("{garment} is on the press. Finish it, step it back or mark it spoiled first.",
                               {{"garment", label}}));
    if (!steps.empty() && !isMadeAgain)
        return fieldError("garments",
                          said("{garment} has been at the press. It can only be changed by making it "
                               "again.",
                               {{"garment", label}}));
    return Done{};
}

Result<Done> checkTakenGarments(const OrderDraft& before, const OrderDraft& after, const ShopFacts& facts) {
    for (const GarmentDraft& was : before.garments) {
        const Garment* garment = facts.garments.find(*was.taken);
        const GarmentDraft* now = takenGarment(after, *was.taken);
        if (!garment || (now && !isOtherwiseMade(was, *now) && !now->isMadeAgain))
            continue;
        // A garment that is left off is given up with what was done for it.
        if (auto touched = checkMayBeTouched(*garment, facts, !now || now->isMadeAgain); !touched.ok())
            return touched;
    }
    return Done{};
}

Result<Done> checkPaidNow(const OrderDraft& after, const Order& order, const Currency& currency) {
    if (after.deposit == Money{})
        return Done{};
    if (order.state == OrderState::Quoted)
        return fieldError("deposit", said("A quotation takes no money."));
    const Money owed = std::max(Money{}, after.total() - order.paid);
    if (after.deposit < Money{} || after.deposit > owed)
        return fieldError("deposit", said("No more than the {amount} owed can be taken.",
                                          {{"amount", Amount{owed, currency}}}));
    return Done{};
}

// A draft of the same order with the same garments and decals.
Result<Done> checkIds(const OrderDraft& before, const OrderDraft& after) {
    for (const GarmentDraft& garment : after.garments) {
        const GarmentDraft* was = garment.taken ? takenGarment(before, *garment.taken) : nullptr;
        const auto isKnown = [&](const DecalDraft& decal) {
            return !decal.taken ||
                   (was && std::ranges::count(was->decals, decal.taken, &DecalDraft::taken) == 1);
        };
        if ((garment.taken && !was) || !std::ranges::all_of(garment.decals, isKnown))
            return fieldError("garments", said("The order was changed meanwhile. Open it again."));
    }
    return Done{};
}

const DecalDraft* takenDecal(const GarmentDraft* garment, std::optional<DecalId> decal) {
    if (!garment)
        return nullptr;
    const auto found = std::ranges::find(garment->decals, decal, &DecalDraft::taken);
    return found == garment->decals.end() ? nullptr : &*found;
}

// `now` is null where the garment is left off.
WorkLost lostOf(const Garment& garment, const GarmentDraft& was, const GarmentDraft* now,
                const ShopFacts& facts) {
    const bool isGivenUp = !now || now->isMadeAgain;
    WorkLost lost{garment.id, isGivenUp && !facts.stepsOf(garment).empty(), {}};
    std::vector<DecalToCut> again;
    for (const DecalDraft& decal : was.decals) {
        const auto own = std::ranges::find(garment.decals, *decal.taken, &Decal::id);
        const DecalDraft* kept = takenDecal(now, decal.taken);
        if (own == garment.decals.end() || !own->isCut() ||
            (kept && !now->isMadeAgain && !isCutOtherwise(decal, *kept)))
            continue;
        lost.decals.push_back(&*own);
        if (kept)
            again.push_back(
                {kept->film, kept->width, kept->height, std::holds_alternative<Wording>(kept->content)});
    }
    lost.again = cuttingTime(again, facts.settings);
    return lost;
}

} // namespace

OrderDraft draftOf(const ShopFacts& facts, OrderId id) {
    const Order& order = facts.orders.at(id);
    const Customer& customer = facts.customers.at(order.customer);
    OrderDraft draft;
    draft.customer = order.customer;
    draft.customerName = customer.name;
    draft.customerPhone = customer.phone;
    for (const Garment* garment : facts.garmentsOf(id))
        draft.garments.push_back(drafted(*garment));
    draft.promised = order.promised;
    draft.isQuotation = order.state == OrderState::Quoted;
    draft.isConfirmed = !draft.isQuotation;
    draft.note = order.note;
    draft.lines = order.lines;
    draft.tax = order.tax;
    return draft;
}

const GarmentDraft* takenGarment(const OrderDraft& draft, GarmentId garment) {
    const auto found = std::ranges::find(draft.garments, std::optional{garment}, &GarmentDraft::taken);
    return found == draft.garments.end() ? nullptr : &*found;
}

bool isOtherwiseMade(const GarmentDraft& before, const GarmentDraft& after) {
    return before.style != after.style || before.size != after.size || before.colour != after.colour ||
           before.decals != after.decals;
}

bool isWorkChanged(const OrderDraft& before, const OrderDraft& after) {
    const auto isNew = [&](const GarmentDraft& garment) {
        const GarmentDraft* was = garment.taken ? takenGarment(before, *garment.taken) : nullptr;
        return !was || garment.isMadeAgain || isOtherwiseMade(*was, garment);
    };
    return before.garments.size() != after.garments.size() || std::ranges::any_of(after.garments, isNew);
}

bool isCutOtherwise(const DecalDraft& before, const DecalDraft& after) {
    return before.content != after.content || before.film != after.film || before.width != after.width ||
           before.height != after.height;
}

Result<Done> checkChange(const OrderDraft& before, const OrderDraft& after, OrderId id,
                         const ShopFacts& facts, const Now& now) {
    const Order& order = facts.orders.at(id);
    if (auto ids = checkIds(before, after); !ids.ok())
        return ids;
    if (auto customer = checkCustomerOf(after); !customer.ok())
        return customer;
    if (auto count = checkGarmentCount(after); !count.ok())
        return count;
    for (std::size_t at = 0; at < after.garments.size(); ++at) {
        const GarmentDraft& garment = after.garments[at];
        if (const GarmentDraft* was = garment.taken ? takenGarment(before, *garment.taken) : nullptr;
            was && *was == garment)
            continue;
        if (auto checked = checkGarment(after, at, facts); !checked.ok())
            return checked;
    }
    if (auto touched = checkTakenGarments(before, after, facts); !touched.ok())
        return touched;
    if (auto lines = checkLines(after, facts.settings.currency); !lines.ok())
        return lines;
    if (auto paid = checkPaidNow(after, order, facts.settings.currency); !paid.ok())
        return paid;
    if (after.promised != before.promised)
        if (auto promise = checkPromisedTime(after.promised, now); !promise.ok())
            return promise;
    return checkNote(after.note);
}

std::vector<WorkLost> workLost(const OrderDraft& before, const OrderDraft& after, const ShopFacts& facts) {
    std::vector<WorkLost> all;
    for (const GarmentDraft& was : before.garments) {
        const Garment* garment = facts.garments.find(*was.taken);
        if (!garment)
            continue;
        WorkLost lost = lostOf(*garment, was, takenGarment(after, *was.taken), facts);
        if (lost.isPressed || !lost.decals.empty())
            all.push_back(std::move(lost));
    }
    return all;
}

} // namespace holdfast

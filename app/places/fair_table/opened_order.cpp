// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/opened_order.h"

#include <algorithm>

namespace holdfast::app {

namespace {

TableGarment laidOut(const GarmentDraft& draft) {
    TableGarment garment{draft.style, draft.size, draft.colour, 1, {}, draft.taken};
    for (const DecalDraft& decal : draft.decals)
        garment.decals.push_back({decal, true, true});
    return garment;
}

std::vector<TableGarment> laidOut(const OrderDraft& draft) {
    std::vector<TableGarment> garments;
    for (const GarmentDraft& garment : draft.garments)
        garments.push_back(laidOut(garment));
    return garments;
}

void forgetTaken(TableGarment& garment) {
    garment.taken.reset();
    garment.isMadeAgain = false;
    for (TableDecal& decal : garment.decals)
        decal.decal.taken.reset();
}

const TableGarment* ofTaken(const std::vector<TableGarment>& garments, std::optional<GarmentId> taken) {
    if (!taken)
        return nullptr;
    const auto found = std::ranges::find(garments, taken, &TableGarment::taken);
    return found == garments.end() ? nullptr : &*found;
}

// Made of the same and in the same way, however many they are and whatever they cost.
bool isMadeTheSame(TableGarment one, const TableGarment& other) {
    one.copies = other.copies;
    one.priceByHand = other.priceByHand;
    return one == other;
}

std::shared_ptr<const TableDraft> setAside(const TableDraft& onTable) {
    return onTable.isUntouched() ? nullptr : std::make_shared<const TableDraft>(onTable);
}

// What was typed of a line that is gone by now is a line of its own.
void keepLinesOf(const OrderDraft& present, std::vector<BillLine>& lines) {
    for (BillLine& line : lines)
        if (std::ranges::find(present.lines, line.taken, &BillLine::taken) == present.lines.end())
            line.taken.reset();
}

TableDraft draftWith(const OrderDraft& order, const TableDraft& onTable) {
    TableDraft draft = nextDraft(onTable);
    draft.garments = laidOut(order);
    if (!draft.garments.front().decals.empty())
        draft.decalAt = 0;
    draft.customer = order.customer;
    draft.customerName = order.customerName;
    draft.customerPhone = order.customerPhone;
    draft.knownPhone = order.customerPhone;
    return draft;
}

} // namespace

TableDraft openedDraft(const ShopFacts& facts, OrderId order, const TableDraft& onTable) {
    const OrderDraft before = draftOf(facts, order);
    TableDraft draft = draftWith(before, onTable);
    draft.note = before.note;
    draft.lines = before.lines;
    draft.opened = std::make_shared<const OpenedOrder>(
        OpenedOrder{facts.orders.at(order), before, draft.garments, setAside(onTable)});
    return draft;
}

TableDraft sameAgain(const ShopFacts& facts, OrderId order, const TableDraft& onTable) {
    TableDraft draft = draftWith(draftOf(facts, order), onTable);
    std::vector<TableGarment> gathered;
    for (TableGarment& garment : draft.garments) {
        forgetTaken(garment);
        const auto alike = std::ranges::find_if(
            gathered, [&](const TableGarment& other) { return isMadeTheSame(garment, other); });
        if (alike == gathered.end())
            gathered.push_back(std::move(garment));
        else
            ++alike->copies;
    }
    draft.garments = std::move(gathered);
    return draft;
}

TableDraft afterOpened(const TableDraft& draft) {
    return draft.opened && draft.opened->aside ? *draft.opened->aside : nextDraft(draft);
}

TableDraft broughtUpToDate(const TableDraft& draft, const ShopFacts& facts) {
    const OpenedOrder& opened = *draft.opened;
    const OrderDraft present = draftOf(facts, opened.order.id);
    const std::vector<TableGarment> there = laidOut(present);
    TableDraft next = draft;
    next.garments.clear();
    for (TableGarment garment : draft.garments) {
        const TableGarment* now = ofTaken(there, garment.taken);
        if (isAsTaken(draft, garment)) {
            if (!now)
                continue; // cancelled there
            const TableGarment typed = garment;
            garment = *now;
            garment.copies = typed.copies;
            garment.priceByHand = typed.priceByHand;
        } else if (garment.taken && !now) {
            forgetTaken(garment); // what was typed stays, as a garment of its own
        }
        next.garments.push_back(std::move(garment));
    }
    for (const TableGarment& garment : there)
        if (!ofTaken(opened.garments, garment.taken))
            next.garments.push_back(garment);
    if (next.garments.empty())
        next.garments.emplace_back();
    next.garmentAt = std::min(next.garmentAt, next.garments.size() - 1);
    if (next.decalAt && *next.decalAt >= next.garment().decals.size())
        next.decalAt.reset();
    if (draft.note == opened.before.note)
        next.note = present.note;
    if (draft.lines == opened.before.lines)
        next.lines = present.lines;
    else
        keepLinesOf(present, next.lines);
    if (draft.customer == opened.before.customer) {
        next.customer = present.customer;
        next.customerName = present.customerName;
        if (draft.customerPhone == draft.knownPhone)
            next.customerPhone = present.customerPhone;
        next.knownPhone = present.customerPhone;
    }
    next.opened = std::make_shared<const OpenedOrder>(
        OpenedOrder{facts.orders.at(opened.order.id), present, there, opened.aside});
    return next;
}

const TableGarment* asOpened(const TableDraft& draft, const TableGarment& garment) {
    return draft.opened ? ofTaken(draft.opened->garments, garment.taken) : nullptr;
}

bool isAsTaken(const TableDraft& draft, const TableGarment& garment) {
    const TableGarment* before = asOpened(draft, garment);
    return before && isMadeTheSame(garment, *before);
}

int copiesToMake(const TableDraft& draft, const TableGarment& garment) {
    return garment.copies - (isAsTaken(draft, garment) ? 1 : 0);
}

int blanksWanted(const TableDraft& draft, const TableGarment& garment) {
    const TableGarment* before = asOpened(draft, garment);
    const bool hasItsOwn = before && !garment.isMadeAgain && before->style == garment.style &&
                           before->size == garment.size && before->colour == garment.colour;
    return garment.copies - (hasItsOwn ? 1 : 0);
}

Sentence whyItStays(const ShopFacts& facts, GarmentId id) {
    const Garment* garment = facts.garments.find(id);
    if (!garment)
        return {};
    const std::string label = facts.labelOf(*garment);
    if (garment->handedOverAt)
        return said("{garment} is handed over; it stays as it is.", {{"garment", label}});
    const auto steps = facts.stepsOf(*garment);
    if (std::ranges::any_of(steps, [](const StepRecord& step) { return !step.finishedAt; }))
        return said("{garment} is on the press; it stays as it is.", {{"garment", label}});
    if (!steps.empty())
        return said("{garment} has been at the press. It can only be changed by making it again.",
                    {{"garment", label}});
    return {};
}

Sentence whatStays(const ShopFacts& facts, const TableDraft& from, const TableDraft& to) {
    if (!from.opened || to.opened != from.opened)
        return {};
    for (const TableGarment& before : from.opened->garments) {
        const TableGarment* now = ofTaken(to.garments, before.taken);
        const Garment* garment = facts.garments.find(*before.taken);
        if (!garment || (now && isMadeTheSame(*now, before)))
            continue;
        const bool mayBeGivenUp = (!now || now->isMadeAgain) && !garment->handedOverAt &&
                                  std::ranges::all_of(facts.stepsOf(*garment), [](const StepRecord& step) {
                                      return step.finishedAt.has_value();
                                  });
        if (const Sentence why = whyItStays(facts, garment->id); !why.empty() && !mayBeGivenUp)
            return why;
    }
    return {};
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Changing an order that was taken: the order as a draft again, in what a changed draft differs from it, and
// what of the work that is done already this costs.

#include "core/orders/order_draft.h"
#include "core/trade/sentence.h"

#include <cstddef>
#include <vector>

namespace holdfast {

// The order as it stands, each garment and decal with the id it was taken under: garments by position, decals
// from the cloth up. Its deposit is nothing, for what was paid is in the order's ledger.
// REQUIRES: the order, its customer and its garments are among the facts.
OrderDraft draftOf(const ShopFacts& facts, OrderId order);

// What was taken under this id; none: it is left off, or was never there.
const GarmentDraft* takenGarment(const OrderDraft& draft, GarmentId garment);

// Another blank, or other decals: what a price is not.
bool isOtherwiseMade(const GarmentDraft& before, const GarmentDraft& after);
// Whether the garment comes to be made otherwise, is new, or is left off.
bool isWorkChanged(const OrderDraft& before, const OrderDraft& after);
// Content, film or measures: what was cut for the one cannot be pressed as the other.
bool isCutOtherwise(const DecalDraft& before, const DecalDraft& after);

// checkDraft for an order that is open; what is as it was is not asked again, for the shop may have changed
// since (a colour is no longer bought, the promise is past). Besides: a garment that is pressed is left off
// or made otherwise only where the draft says that it is made again; one that is on the press, or handed
// over, not at all. The deposit is what is paid now, no more than is then owed.
Result<Done> checkChange(const OrderDraft& before, const OrderDraft& after, OrderId order,
                         const ShopFacts& facts, const Now& now);

// Each change in words, with what it was before: of the order, then of its garments in their order.
std::vector<Sentence> changesBetween(const OrderDraft& before, const OrderDraft& after, OrderId order,
                                     const ShopFacts& facts);

// Of one garment, what was done for it and is done in vain by a change.
struct WorkLost {
    GarmentId garment;
    bool isPressed = false;           // it is pressed, and its blank is lost with it
    std::vector<const Decal*> decals; // that are cut, of `facts`
    Seconds again{0};                 // to cut them once more; none where the garment is left off

    bool operator==(const WorkLost&) const = default;
};
std::vector<WorkLost> workLost(const OrderDraft& before, const OrderDraft& after, const ShopFacts& facts);
// "418-b: Heron is cut in vain, 240 × 300 mm. To cut it again takes 4 min."
Sentence lostWords(const WorkLost& lost, const ShopFacts& facts);

} // namespace holdfast

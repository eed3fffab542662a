// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person does with an order. Each is one journaled action; bad input comes back as an Error that names
// the field, and nothing is written.

#include "core/facts/order.h"
#include "core/orders/order_draft.h"
#include "core/trade/dates.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast::db {

struct OrderTaken {
    OrderId id;
    std::int64_t number = 0;
};

// Keeps a blank for each garment where one is free (washed and dry before unwashed, older lots first); a
// quotation keeps none before it is confirmed. Taken at the fair that the settings name, or at the workshop.
// A customer who is not named by id is found by name and phone number, or new.
Result<OrderTaken> takeOrder(Shop& shop, const OrderDraft& draft, const Now& now);

// An open order as it stands (`before`, from draftOf) becomes what the draft says (`after`, with the ids it
// was taken under), in one entry that names each change. Number and letters stay. A garment that is left off
// is cancelled; blanks are given back and kept anew; a decal that is to be otherwise than it was cut is cut
// again; a garment that is made again counts as spoiled. Refused where the order changed meanwhile, and see
// checkChange.
Result<Done> changeOrder(Shop& shop, OrderId order, const OrderDraft& before, const OrderDraft& after,
                         const Now& now);

// Reserves its blanks from now on, where any are free.
Result<Done> confirmQuotation(Shop& shop, OrderId order);
// Where a wording’s outline is given it is kept with it (Wording::outline); agreeing replaces none that is
// kept.
Result<Done> confirmWording(Shop& shop, DecalId decal, const std::string& how, // "by phone", 1–80 characters
                            const std::string& outline = {});
Result<Done> rewordDecal(Shop& shop, DecalId decal, const std::string& wording, // unconfirms it; not once cut
                         const std::string& outline = {});
// Decals of one order that the customer agreed to at once, each with the wording that it is to bear, where
// that is another one, and the outline to be kept with it. An error in a wording names the field "wording-1"
// for the first of them, and so on.
struct AgreedDecal {
    DecalId decal;
    std::optional<std::string> wording;
    std::string outline{};
};
Result<Done> confirmWordings(Shop& shop, std::span<const AgreedDecal> agreed, const std::string& how);
Result<Done> movePromise(Shop& shop, OrderId order, LocalTime promised, const Now& now); // not into the past
Result<Done> changeFilm(Shop& shop, DecalId decal, FilmId film);                         // not once cut
Result<Done> changeLayer(Shop& shop, DecalId decal, int layer); // 1–12, not once pressing began
// All decals of the garment, the one on the cloth first: layers 1, 2, 3 … from there. Not once pressing
// began.
Result<Done> reorderLayers(Shop& shop, GarmentId garment, std::span<const DecalId> fromCloth);
Result<Done> changeBlank(Shop& shop, GarmentId garment, BlankStyleId style, const std::string& size,
                         ColourId colour);                                   // not once pressing began
Result<Done> changeNote(Shop& shop, OrderId order, const std::string& note); // up to 500 characters

// A deposit or payment is positive and no more than is owed; a refund is positive and no more than was paid.
Result<Done> moveMoney(Shop& shop, OrderId order, MoneyKind kind, Money amount, PaidHow how);

// Refused while a garment of it is on the press, or handed over. Gives kept blanks back to the rail, and from
// there to garments that wait for one. Reason 3–200 characters.
Result<Done> cancelOrder(Shop& shop, OrderId order, const std::string& reason);

// One garment of an order that goes on without it: not the only one, nor one that is on the press or handed
// over. Its blank goes back to the rail; what was cut for it is lost. Reason 3–200 characters.
Result<Done> cancelGarment(Shop& shop, GarmentId garment, const std::string& reason, const Now& now);

// Garments and money of the second order go over to the first; what is left of it is cancelled. Both are
// open, of one customer, and nothing of the second is handed over. The later promise stands.
Result<Done> mergeOrders(Shop& shop, OrderId into, OrderId from);
// Some garments of an order become an order of their own, with the same customer, promise and day of taking;
// what is then paid too much for the one pays the other.
Result<OrderTaken> splitOrder(Shop& shop, OrderId order, std::span<const GarmentId> garments);

// All garments of an order that are pressed and not handed over yet, or of these the chosen ones; the order
// is handed over when none is left. Refused in words where none is pressed, or one of those chosen is not.
// What is still owed is said, not refused.
Result<Done> handOver(Shop& shop, OrderId order, const Now& now, std::span<const GarmentId> chosen = {});

} // namespace holdfast::db

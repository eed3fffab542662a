// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Days for many orders that are to be taken at once: each is promised after those before it, whose hands,
// blanks, washes and film it leaves alone.

#include "core/orders/order_draft.h"
#include "core/orders/promise.h"
#include "core/shop/reckoned_shop.h"

#include <span>

namespace holdfast {

// What a promise has to know of a garment that is to be taken.
AskedGarment askedFor(const ShopFacts& facts, const GarmentDraft& draft);

class PromisesInTurn {
public:
    // REQUIRES: the shop outlives it.
    explicit PromisesInTurn(const ReckonedShop& shop);

    // The day for the next order, as promiseFor has it; nothing is set aside for it yet.
    Result<Promise> ask(std::span<const AskedGarment> asked) const;
    // It is promised for that day: what it takes is no longer there for those after it.
    void give(std::span<const AskedGarment> asked, LocalTime promised);

private:
    void takeBlank(const AskedGarment& garment, std::span<BlankLot> lots);
    void takeFilm(const AskedGarment& garment);

    ShopFacts m_facts; // of which the lots have what is left
    Now m_now;
    Promised m_promised;
};

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An order as it is typed at the table: one to be taken, or one that was taken and is to be changed.

#include "core/facts/order.h"
#include "core/facts/shop_facts.h"
#include "core/trade/result.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace holdfast {

struct DecalDraft {
    FilmId film;
    DecalContent content;
    Placement placement = Placement::Chest;
    Millimetres below;
    Millimetres aside;
    Millimetres width;
    Millimetres height;
    int layer = 1;
    std::optional<DecalId> taken{}; // of an order that was taken: under which id

    bool operator==(const DecalDraft&) const = default;
};

struct GarmentDraft {
    BlankStyleId style;
    std::string size;
    ColourId colour;
    Money price;
    std::vector<DecalDraft> decals;
    std::optional<GarmentId> taken{}; // of an order that was taken: under which id
    bool isMadeAgain = false;         // it is pressed, and is to be made once more

    bool operator==(const GarmentDraft&) const = default;
};

enum class MoneyKind { Deposit, Payment, Refund };
enum class PaidHow { Cash, Card, Transfer };
Phrase paidWords(PaidHow how);

struct OrderDraft {
    std::optional<CustomerId> customer; // one already known; else a new one of this name and phone
    std::string customerName;
    std::string customerPhone;
    std::vector<GarmentDraft> garments;
    LocalTime promised{};
    Money deposit;
    PaidHow depositHow = PaidHow::Cash;
    bool isConfirmed = true;  // the customer agreed to wording and artwork at the table
    bool isQuotation = false; // the customer thinks it over: quoted, not confirmed
    std::string note;
    std::vector<BillLine> lines{}; // besides the garments
    TaxRule tax{};                 // the shop's; of an order that was taken, its own

    Money total() const; // with lines and added tax
    bool operator==(const OrderDraft&) const = default;
};

// The garment as it would be once it is taken, its decals numbered from 1.
Garment asGarment(const GarmentDraft& draft);

// Says of the first thing that is wrong what is allowed, naming the field: customer name (1–80 characters),
// phone (up to 30), 1 to 200 garments, style/size/colour known, 1–12 decals a garment with a film, sizes
// 5–2,000 mm, wording 1–60 characters, price 0 or more and below a million units, deposit from 0 to the total
// (0 on a quotation), promise not before now and within five years, note up to 500 characters.
Result<Done> checkDraft(const OrderDraft& draft, const ShopFacts& facts, const Now& now);

// The parts of it. Where there are several garments, what is wrong with one is said with its letter.
Result<Done> checkCustomerOf(const OrderDraft& draft);
Result<Done> checkGarmentCount(const OrderDraft& draft);
Result<Done> checkGarment(const OrderDraft& draft, std::size_t at, const ShopFacts& facts);
// Up to 20 lines of 60 characters, each below a million units or up to 100 %; the total stays 0 or more.
Result<Done> checkLines(const OrderDraft& draft, const Currency& currency);
Result<Done> checkNote(const std::string& note);
// Not before the present minute, within five years.
Result<Done> checkPromisedTime(LocalTime promised, const Now& now);

inline constexpr std::size_t kMostNoteCharacters = 500;

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A file of orders as a web shop writes it (comma-separated values): which of its columns is what, which
// garment each of its items is like, and the orders that come of it.

#include "core/orders/order_draft.h"
#include "core/orders/wanted_day.h"
#include "core/trade/ids.h"
#include "core/trade/sentence.h"

#include <array>
#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

// What a column may be. Price is that of one; Paid is an amount or a yes; Wanted is the day asked for.
enum class OrderColumn {
    Reference,
    Customer,
    Phone,
    Item,
    Size,
    Colour,
    Copies,
    Wording,
    Price,
    Paid,
    Wanted,
    Note
};
inline constexpr std::array kOrderColumns{
    OrderColumn::Reference, OrderColumn::Customer, OrderColumn::Phone,  OrderColumn::Item,
    OrderColumn::Size,      OrderColumn::Colour,   OrderColumn::Copies, OrderColumn::Wording,
    OrderColumn::Price,     OrderColumn::Paid,     OrderColumn::Wanted, OrderColumn::Note,
};
Phrase columnWords(OrderColumn column); // "The order’s reference"
bool isNeeded(OrderColumn column);      // reference, customer and item

struct OrderFileNaming {
    std::string shop;                           // 1–40 characters: "Web shop"
    std::vector<std::string> headings;          // of the whole file, in turn
    std::map<OrderColumn, std::string> columns; // those that are there, by their heading
    std::map<std::string, GarmentId> items;     // by their text: the garment that such a one is like

    bool operator==(const OrderFileNaming&) const = default;
};

inline constexpr std::size_t kMostFileItems = 200;

// What the columns may be by the words over them, as a proposal.
std::map<OrderColumn, std::string> likelyColumns(std::span<const std::string> headings);

// Names the first thing that is wrong: the field is "shop", "columns" or "items".
Result<Done> checkNaming(const OrderFileNaming& naming);

// One line of the file.
struct FiledLine {
    std::size_t line = 0; // of the file, from 1
    std::string reference;
    std::string customer;
    std::size_t copies = 1;
    std::optional<GarmentDraft> garment; // of which there are so many copies; none: it is wrong
    Sentence wrong;                      // names line, heading and what is allowed; empty: it can be read
    Sentence caution;                    // what somebody should look at
    std::optional<std::int64_t> known{}; // the order that was taken for this reference before
};

// Lines with one reference, in turn.
struct FiledOrder {
    std::string reference;
    std::vector<std::size_t> lines; // places in OrderFileRead::lines
    OrderDraft draft;
    std::optional<WantedDay> wanted;
};

struct OrderFileRead {
    OrderFileNaming naming;
    std::vector<FiledLine> lines;
    std::vector<FiledOrder> orders; // to be taken; those that are known are not among them

    std::size_t wrongLines() const;
    std::size_t knownOrders() const;
};

} // namespace holdfast

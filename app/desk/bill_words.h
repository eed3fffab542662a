// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What an order comes to besides its garments, in words, with its amounts.

#include "core/facts/shop_facts.h"
#include "core/orders/order_sum.h"

#include <QString>

#include <vector>

namespace holdfast::app {

struct BillWords {
    QString words;  // "Gift wrap", "VAT 20 %"
    QString amount; // "2.50"
};

// The lines, then the tax, where there is any: "of it VAT 20 %" where the prices have it in them.
std::vector<BillWords> billWords(std::span<const BillLine> lines, const OrderSum& sum, const TaxRule& tax,
                                 const ShopSettings& settings);
std::vector<BillWords> billWords(const ShopFacts& facts, const Order& order);

// "Gift wrap 2.50 · of it VAT 20 % 3.33"; empty where there is nothing but garments.
QString billInLine(const std::vector<BillWords>& bill);

} // namespace holdfast::app

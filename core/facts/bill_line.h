// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What an order comes to besides its garments: something more in words, a discount with its reason, what many
// at once or a short day change; and the tax on all of it, as it was when the order was taken.

#include "core/trade/ids.h"
#include "core/trade/money.h"
#include "core/trade/sentence.h"

#include <optional>
#include <string>
#include <variant>

namespace holdfast {

enum class BillLineKind { Extra, Discount, ForMany, Rush };

struct BillLine {
    BillLineKind kind = BillLineKind::Extra;
    std::string words; // what it is for, or why; may be empty but for an extra
    // An amount, or a part of what the garments cost; below 0 what is taken off.
    std::variant<Money, Percentage> worth;
    std::optional<BillLineId> taken{}; // under which id it is in the shop

    bool operator==(const BillLine&) const = default;
};

// Included: prices are with tax, and the paper says how much of them it is. Added: prices are without, and it
// comes on top. By line: rounded for each garment and line; by total: once.
enum class TaxKind { None, Included, Added };
enum class TaxedBy { Line, Total };

struct TaxRule {
    TaxKind kind = TaxKind::None;
    Percentage rate;
    TaxedBy by = TaxedBy::Total;
    Rounding rounding = Rounding::HalfUp;

    bool operator==(const TaxRule&) const = default;
};

// "Gift wrap £2.50", "Discount 10 %, regular customer".
Sentence lineWords(const BillLine& line, const Currency& currency);
// The same without its amount: "Gift wrap", "Discount 10 %, regular customer".
Sentence lineName(const BillLine& line);

// "VAT 20 %"; where the shop has no name for it, "Tax 20 %".
Sentence taxWords(const TaxRule& tax, const std::string& name);

} // namespace holdfast

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/bill_line.h"

#include "core/trade/percentage_value.h"

#include <cmath>

namespace holdfast {

namespace {

Sentence kindWords(BillLineKind kind) {
    switch (kind) {
    case BillLineKind::Extra:
        return said("Extra");
    case BillLineKind::Discount:
        return said("Discount");
    case BillLineKind::ForMany:
        return said("For many");
    case BillLineKind::Rush:
        return said("Rush");
    }
    return {};
}

} // namespace

Sentence lineName(const BillLine& line) {
    if (line.kind == BillLineKind::Extra)
        return line.words.empty() ? kindWords(line.kind) : said("{words}", {{"words", line.words}});
    Sentence name = kindWords(line.kind);
    if (const auto* share = std::get_if<Percentage>(&line.worth))
        name = said("{name} {share} %",
                    {{"name", name}, {"share", decimalOf(Percentage{std::abs(share->hundredths)})}});
    return line.words.empty() ? name : said("{name}, {why}", {{"name", name}, {"why", line.words}});
}

Sentence lineWords(const BillLine& line, const Currency& currency) {
    const auto* amount = std::get_if<Money>(&line.worth);
    return amount ? said("{name} {amount}", {{"name", lineName(line)}, {"amount", Amount{*amount, currency}}})
                  : lineName(line);
}

Sentence taxWords(const TaxRule& tax, const std::string& name) {
    const Decimal rate = decimalOf(tax.rate);
    return name.empty() ? said("Tax {rate} %", {{"rate", rate}})
                        : said("{name} {rate} %", {{"name", name}, {"rate", rate}});
}

} // namespace holdfast

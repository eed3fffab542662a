// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/table_bill.h"

#include "app/places/fair_table/opened_order.h"

#include <algorithm>

namespace holdfast::app {

namespace {

BillLine* lineOf(std::vector<BillLine>& lines, BillLineKind kind) {
    const auto found = std::ranges::find(lines, kind, &BillLine::kind);
    return found == lines.end() ? nullptr : &*found;
}

std::int64_t garmentsOf(const TableDraft& draft) {
    std::int64_t count = 0;
    for (const TableGarment& garment : draft.garments)
        count += garment.style.isSet() ? garment.copies : 0;
    return count;
}

// An order that was taken gets what many cost less only where it has become larger.
void addForMany(const TableDraft& draft, const PriceRules& rules, std::vector<BillLine>& lines) {
    const std::int64_t count = garmentsOf(draft);
    if (draft.isForManyOff || (draft.opened && count <= std::ssize(draft.opened->garments)))
        return;
    const auto line = forManyLine(rules, count);
    if (!line)
        return;
    BillLine* agreed = lineOf(lines, BillLineKind::ForMany);
    if (!agreed)
        lines.push_back(*line);
    else if (const auto* share = std::get_if<Percentage>(&agreed->worth);
             share && std::get<Percentage>(line->worth) < *share)
        agreed->worth = line->worth;
}

void addRush(const TableDraft& draft, const PriceRules& rules, LocalDate today,
             std::vector<BillLine>& lines) {
    const auto line = draft.wantedOn ? rushLine(rules, *draft.wantedOn, today) : std::nullopt;
    if (line && !draft.isRushOff && !lineOf(lines, BillLineKind::Rush))
        lines.push_back(*line);
}

} // namespace

TableBill billOf(const TableDraft& draft, std::span<const Money> prices, const ShopSettings& settings,
                 LocalDate today) {
    TableBill bill{draft.lines, {}};
    addForMany(draft, settings.prices, bill.lines);
    addRush(draft, settings.prices, today, bill.lines);
    std::vector<Money> all;
    for (std::size_t at = 0; at < draft.garments.size(); ++at)
        all.insert(all.end(), static_cast<std::size_t>(draft.garments[at].copies), prices[at]);
    bill.sum = sumOf(all, bill.lines, draft.opened ? draft.opened->before.tax : settings.prices.tax);
    return bill;
}

void removeLine(TableDraft& draft, const BillLine& line) {
    if (line.kind == BillLineKind::ForMany)
        draft.isForManyOff = true;
    if (line.kind == BillLineKind::Rush)
        draft.isRushOff = true;
    if (const auto found = std::ranges::find(draft.lines, line); found != draft.lines.end())
        draft.lines.erase(found);
    else if (line.taken)
        std::erase_if(draft.lines, [&](const BillLine& each) { return each.taken == line.taken; });
}

std::optional<std::variant<Money, Percentage>> readDiscount(const std::string& typed,
                                                            const Currency& currency) {
    if (typed.find('%') != std::string::npos) {
        const auto share = parsePercentage(typed);
        if (share && *share > Percentage{} && *share <= kWholePercentage)
            return Percentage{-share->hundredths};
        return std::nullopt;
    }
    const auto amount = parseAmount(typed, currency);
    return amount && *amount > Money{} ? std::optional{std::variant<Money, Percentage>{-*amount}}
                                       : std::nullopt;
}

const BillLine* discountOf(const TableDraft& draft) {
    const auto found = std::ranges::find(draft.lines, BillLineKind::Discount, &BillLine::kind);
    return found == draft.lines.end() ? nullptr : &*found;
}

void giveDiscount(TableDraft& draft, const std::optional<std::variant<Money, Percentage>>& worth,
                  const std::string& why) {
    BillLine* line = lineOf(draft.lines, BillLineKind::Discount);
    if (!worth) {
        if (line)
            std::erase(draft.lines, BillLine{*line});
    } else if (line) {
        line->worth = *worth;
        line->words = why;
    } else {
        draft.lines.push_back({BillLineKind::Discount, why, *worth});
    }
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/invoicing.h"

#include "core/orders/order_sum.h"

#include <algorithm>
#include <string_view>

namespace holdfast {

namespace {

Sentence garmentWords(const ShopFacts& facts, const Garment& garment) {
    const BlankStyle& style = facts.styleOf(garment);
    const Colour* colour = style.colour(garment.colour);
    std::vector<NamedValue> values{{"style", style.name}, {"size", garment.size}};
    if (colour)
        values.push_back({"colour", colour->name});
    const Sentence name =
        colour ? said("{style}, {size}, {colour}", values) : said("{style}, {size}", values);
    return garment.decals.empty() ? name
                                  : said("{garment}, with {n} decal|{garment}, with {n} decals",
                                         {{"garment", name}, {"n", garment.decals.size()}});
}

InvoiceSum sumOfRows(std::span<const InvoiceRow> rows, const TaxRule& tax) {
    std::vector<Money> amounts;
    for (const InvoiceRow& row : rows)
        amounts.push_back(row.amount);
    return invoiceSum(amounts, tax);
}

} // namespace

std::vector<BilledRow> billedRows(const ShopFacts& facts, OrderId id) {
    const Order& order = facts.orders.at(id);
    std::vector<BilledRow> rows;
    std::vector<Money> prices;
    for (const Garment* garment : facts.garmentsOf(id)) {
        rows.push_back({garmentWords(facts, *garment), garment->price});
        prices.push_back(garment->price);
    }
    const OrderSum sum = sumOf(prices, order.lines, order.tax);
    for (std::size_t at = 0; at < order.lines.size(); ++at)
        rows.push_back({lineName(order.lines[at]), sum.lines[at]});
    return rows;
}

InvoiceSum invoiceSum(std::span<const Money> amounts, const TaxRule& tax) {
    const OrderSum sum = sumOf(amounts, {}, tax);
    return {sum.garments, sum.tax, sum.total};
}

std::vector<InvoiceRow> notCredited(const Invoice& invoice, std::span<const Invoice> all) {
    std::vector<InvoiceRow> left = invoice.rows;
    for (const Invoice& note : all)
        if (note.corrects == invoice.id)
            std::erase_if(left, [&](const InvoiceRow& row) {
                return std::ranges::find(note.rows, row.id, &InvoiceRow::credits) != note.rows.end();
            });
    return left;
}

Money leftOf(const Invoice& invoice, std::span<const Invoice> all) {
    return sumOfRows(notCredited(invoice, all), invoice.tax).total;
}

InvoiceSum creditSum(const Invoice& invoice, std::span<const Invoice> all,
                     std::span<const InvoiceRowId> rows) {
    std::vector<InvoiceRow> left = notCredited(invoice, all);
    const InvoiceSum before = sumOfRows(left, invoice.tax);
    std::erase_if(left, [&](const InvoiceRow& row) { return std::ranges::find(rows, row.id) != rows.end(); });
    const InvoiceSum after = sumOfRows(left, invoice.tax);
    return {before.rows - after.rows, before.tax - after.tax, before.total - after.total};
}

const Invoice* invoiceInForce(std::span<const Invoice> all) {
    const Invoice* latest = nullptr;
    for (const Invoice& invoice : all)
        if (invoice.kind == InvoiceKind::Invoice && leftOf(invoice, all) > Money{} &&
            (!latest || latest->id < invoice.id))
            latest = &invoice;
    return latest;
}

Sentence invoiceRemark(const Order& order, std::span<const Invoice> all, const Currency& currency) {
    if (!invoiceInForce(all))
        return {};
    Money invoiced;
    for (const Invoice& each : all)
        invoiced += each.kind == InvoiceKind::Invoice ? each.total : -each.total;
    const Money comesTo = order.state == OrderState::Cancelled ? Money{} : order.total;
    if (invoiced > comesTo)
        return said("Its invoice asks {amount} more than the order comes to: a credit note is due.",
                    {{"amount", Amount{invoiced - comesTo, currency}}});
    if (invoiced < comesTo)
        return said("The order comes to {amount} more than its invoice asks: a credit note for all of it is "
                    "due, then a new invoice.",
                    {{"amount", Amount{comesTo - invoiced, currency}}});
    return {};
}

std::string invoiceSeries(std::int64_t seat, std::int64_t incarnation) {
    // Without vowels, so that they make no word.
    constexpr std::string_view kLetters = "BCDFGHJKLMNPQRSTVWXZ";
    constexpr int kLettersEach = 3;
    std::string series = std::to_string(seat);
    for (int letter = 0; letter < kLettersEach; ++letter) {
        series += kLetters[static_cast<std::size_t>(incarnation) % kLetters.size()];
        incarnation /= static_cast<std::int64_t>(kLetters.size());
    }
    return series;
}

} // namespace holdfast

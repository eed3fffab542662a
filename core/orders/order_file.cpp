// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_file.h"

#include "core/trade/folded.h"
#include "core/trade/limits.h"

#include <algorithm>
#include <set>

namespace holdfast {

namespace {

struct LikelyWord {
    std::string_view word; // as `folded` has it
    OrderColumn column;
};
// What is mostly over such columns, the surest first; "name" alone may be that of the item.
constexpr std::array kLikelyWords{
    LikelyWord{"reference", OrderColumn::Reference},
    LikelyWord{"order number", OrderColumn::Reference},
    LikelyWord{"order no", OrderColumn::Reference},
    LikelyWord{"order id", OrderColumn::Reference},
    LikelyWord{"bestellnummer", OrderColumn::Reference},
    LikelyWord{"order", OrderColumn::Reference},
    LikelyWord{"customer", OrderColumn::Customer},
    LikelyWord{"buyer", OrderColumn::Customer},
    LikelyWord{"kunde", OrderColumn::Customer},
    LikelyWord{"billing name", OrderColumn::Customer},
    LikelyWord{"phone", OrderColumn::Phone},
    LikelyWord{"telefon", OrderColumn::Phone},
    LikelyWord{"item", OrderColumn::Item},
    LikelyWord{"product", OrderColumn::Item},
    LikelyWord{"artikel", OrderColumn::Item},
    LikelyWord{"article", OrderColumn::Item},
    LikelyWord{"size", OrderColumn::Size},
    LikelyWord{"grosse", OrderColumn::Size},
    LikelyWord{"colour", OrderColumn::Colour},
    LikelyWord{"color", OrderColumn::Colour},
    LikelyWord{"farbe", OrderColumn::Colour},
    LikelyWord{"quantity", OrderColumn::Copies},
    LikelyWord{"qty", OrderColumn::Copies},
    LikelyWord{"how many", OrderColumn::Copies},
    LikelyWord{"menge", OrderColumn::Copies},
    LikelyWord{"anzahl", OrderColumn::Copies},
    LikelyWord{"wording", OrderColumn::Wording},
    LikelyWord{"personal", OrderColumn::Wording},
    LikelyWord{"aufdruck", OrderColumn::Wording},
    LikelyWord{"text", OrderColumn::Wording},
    LikelyWord{"price", OrderColumn::Price},
    LikelyWord{"preis", OrderColumn::Price},
    LikelyWord{"paid", OrderColumn::Paid},
    LikelyWord{"bezahlt", OrderColumn::Paid},
    LikelyWord{"wanted", OrderColumn::Wanted},
    LikelyWord{"due", OrderColumn::Wanted},
    LikelyWord{"delivery date", OrderColumn::Wanted},
    LikelyWord{"wunschtermin", OrderColumn::Wanted},
    LikelyWord{"note", OrderColumn::Note},
    LikelyWord{"comment", OrderColumn::Note},
    LikelyWord{"bemerkung", OrderColumn::Note},
    LikelyWord{"name", OrderColumn::Customer},
};

} // namespace

Phrase columnWords(OrderColumn column) {
    switch (column) {
    case OrderColumn::Reference:
        return phrase("The order’s reference");
    case OrderColumn::Customer:
        return phrase("The customer’s name");
    case OrderColumn::Phone:
        return phrase("The phone number");
    case OrderColumn::Item:
        return phrase("The item");
    case OrderColumn::Size:
        return phrase("The size");
    case OrderColumn::Colour:
        return phrase("The colour");
    case OrderColumn::Copies:
        return phrase("How many");
    case OrderColumn::Wording:
        return phrase("The wording");
    case OrderColumn::Price:
        return phrase("The price of one");
    case OrderColumn::Paid:
        return phrase("What is paid");
    case OrderColumn::Wanted:
        return phrase("The day asked for");
    case OrderColumn::Note:
        return phrase("The note");
    }
    return {};
}

bool isNeeded(OrderColumn column) {
    return column == OrderColumn::Reference || column == OrderColumn::Customer || column == OrderColumn::Item;
}

std::map<OrderColumn, std::string> likelyColumns(std::span<const std::string> headings) {
    std::map<OrderColumn, std::string> columns;
    std::set<std::string> taken;
    for (const bool isWhole : {true, false}) // what is named so in full before what has it in it
        for (const LikelyWord& likely : kLikelyWords) {
            if (columns.contains(likely.column))
                continue;
            const auto found = std::ranges::find_if(headings, [&](const std::string& heading) {
                const std::string word = folded(heading);
                return !taken.contains(heading) &&
                       (isWhole ? word == likely.word : word.find(likely.word) != std::string::npos);
            });
            if (found == headings.end())
                continue;
            columns[likely.column] = *found;
            taken.insert(*found);
        }
    return columns;
}

Result<Done> checkNaming(const OrderFileNaming& naming) {
    const auto shop =
        typedText(naming.shop, {.field = "shop", .what = phrase("The web shop’s name"), .most = 40});
    if (!shop.ok())
        return shop.error();
    std::map<std::string, OrderColumn> named;
    for (const OrderColumn column : kOrderColumns) {
        const auto heading = naming.columns.find(column);
        if (heading == naming.columns.end()) {
            if (isNeeded(column))
                return fieldError("columns", said("{column} is needed: say which column it is.",
                                                  {{"column", columnWords(column)}}));
            continue;
        }
        if (std::ranges::find(naming.headings, heading->second) == naming.headings.end())
            return fieldError("columns",
                              said("The file has no column “{heading}”.", {{"heading", heading->second}}));
        if (const auto twice = named.emplace(heading->second, column); !twice.second)
            return fieldError("columns",
                              said("The column “{heading}” is named twice.", {{"heading", heading->second}}));
    }
    return within(static_cast<std::int64_t>(naming.items.size()),
                  {.field = "items",
                   .what = phrase("The number of items"),
                   .least = 0,
                   .most = static_cast<std::int64_t>(kMostFileItems)});
}

std::size_t OrderFileRead::wrongLines() const {
    return static_cast<std::size_t>(
        std::ranges::count_if(lines, [](const FiledLine& line) { return !line.wrong.empty(); }));
}

std::size_t OrderFileRead::knownOrders() const {
    std::set<std::int64_t> known;
    for (const FiledLine& line : lines)
        if (line.known)
            known.insert(*line.known);
    return known.size();
}

} // namespace holdfast

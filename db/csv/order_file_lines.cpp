// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/order_file_lines.h"

#include "core/orders/team_list.h"
#include "core/shop/garment_cost.h"
#include "core/trade/folded.h"
#include "core/trade/limits.h"

#include <algorithm>
#include <charconv>

namespace holdfast::db {

namespace {

std::string listOf(const std::vector<std::string>& words) {
    std::string list;
    for (const std::string& word : words)
        list += (list.empty() ? "" : ", ") + word;
    return list;
}

// "25.11.2026"; with slashes it could be two days.
std::optional<LocalDate> dottedDay(std::string_view text) {
    int parts[3] = {};
    for (int at = 0; at < 3; ++at) {
        const auto end = at < 2 ? text.find('.') : text.size();
        const std::string_view part = text.substr(0, end);
        if (end == std::string_view::npos || part.empty() ||
            std::from_chars(part.data(), part.data() + part.size(), parts[at]).ptr !=
                part.data() + part.size())
            return std::nullopt;
        text.remove_prefix(std::min(text.size(), end + 1));
    }
    if (parts[0] < 1 || parts[0] > 31 || parts[1] < 1 || parts[1] > 12 || parts[2] < 2000 || parts[2] > 2200)
        return std::nullopt; // before what a date keeps of a large number
    const std::chrono::year_month_day day{std::chrono::year{parts[2]},
                                          std::chrono::month{static_cast<unsigned>(parts[1])},
                                          std::chrono::day{static_cast<unsigned>(parts[0])}};
    return day.ok() ? std::optional{LocalDate{day}} : std::nullopt;
}

} // namespace

OrderLineReader::OrderLineReader(const OrderFileNaming& naming,
                                 const std::map<GarmentId, GarmentDraft>& likes, const ReckonedShop& shop,
                                 const Letter& letter)
    : m_naming(naming)
    , m_likes(likes)
    , m_shop(shop)
    , m_letter(letter) {}

std::string OrderLineReader::heading(OrderColumn column) const {
    const auto found = m_naming.columns.find(column);
    return found == m_naming.columns.end() ? std::string{} : found->second;
}

std::string OrderLineReader::text(const ImportRow& row, OrderColumn column) const {
    const std::string named = heading(column);
    return named.empty() ? std::string{} : row.text(named);
}

FiledLine OrderLineReader::read(ImportRow& row) {
    FiledLine line;
    line.line = row.line();
    line.reference = text(row, OrderColumn::Reference);
    line.customer = text(row, OrderColumn::Customer);
    const auto reference = typedText(
        line.reference, {.field = "reference", .what = columnWords(OrderColumn::Reference), .most = 60});
    if (!reference.ok())
        row.wrong(heading(OrderColumn::Reference), reference.error().message);
    if (const std::string copies = heading(OrderColumn::Copies); !copies.empty()) {
        const std::int64_t count = row.whole(copies, 1);
        if (count < 1 || count > kMostCopies)
            row.wrong(copies, said("1 to {most}.", {{"most", kMostCopies}}));
        line.copies = static_cast<std::size_t>(std::clamp<std::int64_t>(count, 1, kMostCopies));
    }
    line.garment = garmentOf(row, line);
    return line;
}

std::optional<GarmentDraft> OrderLineReader::garmentOf(ImportRow& row, FiledLine& line) {
    const std::string item = text(row, OrderColumn::Item);
    const auto named = m_naming.items.find(item);
    const auto like = named == m_naming.items.end() ? m_likes.end() : m_likes.find(named->second);
    if (item.empty())
        row.wrong(heading(OrderColumn::Item), said("it is needed."));
    else if (like == m_likes.end())
        row.wrong(heading(OrderColumn::Item),
                  said("say once in the window which garment “{item}” is like.", {{"item", item}}));
    if (row.whatIsWrong())
        return std::nullopt;
    GarmentDraft garment = like->second;
    const BlankStyle* style = m_shop.facts.styles.find(garment.style);
    if (!style) {
        row.wrong(heading(OrderColumn::Item),
                  said("the garment that “{item}” is like is of a style that is not known here.",
                       {{"item", item}}));
        return std::nullopt;
    }
    chooseSize(row, garment, *style);
    chooseColour(row, garment, *style);
    if (!row.whatIsWrong())
        putWording(row, garment, line);
    if (!row.whatIsWrong())
        setPrice(row, garment);
    return row.whatIsWrong() ? std::nullopt : std::optional{std::move(garment)};
}

void OrderLineReader::chooseSize(ImportRow& row, GarmentDraft& garment, const BlankStyle& style) const {
    const std::string written = text(row, OrderColumn::Size);
    if (written.empty())
        return;
    if (const auto size = sizeAmong(style.sizes, written))
        garment.size = *size;
    else
        row.wrong(heading(OrderColumn::Size),
                  said("{style} has no size “{size}”. It has {sizes}.",
                       {{"style", style.name}, {"size", written}, {"sizes", listOf(style.sizes)}}));
}

void OrderLineReader::chooseColour(ImportRow& row, GarmentDraft& garment, const BlankStyle& style) const {
    const std::string written = text(row, OrderColumn::Colour);
    if (written.empty())
        return;
    std::vector<std::string> names;
    for (const Colour& colour : style.colours) {
        if (folded(colour.name) == folded(written)) {
            garment.colour = colour.id;
            return;
        }
        names.push_back(colour.name);
    }
    row.wrong(heading(OrderColumn::Colour),
              said("{style} has no colour “{colour}”. It has {colours}.",
                   {{"style", style.name}, {"colour", written}, {"colours", listOf(names)}}));
}

// It replaces the first wording of the garment that the item is like. Where the line has none that wording
// stays, and somebody must look at it: it may be another customer's name.
void OrderLineReader::putWording(ImportRow& row, GarmentDraft& garment, FiledLine& line) const {
    const std::string named = heading(OrderColumn::Wording);
    if (named.empty())
        return;
    const std::string written = row.text(named);
    const auto decal = std::ranges::find_if(
        garment.decals, [](const DecalDraft& each) { return std::holds_alternative<Wording>(each.content); });
    if (decal == garment.decals.end()) {
        if (!written.empty())
            row.wrong(named, said("the garment that “{item}” is like has no wording that this could replace.",
                                  {{"item", text(row, OrderColumn::Item)}}));
        return;
    }
    if (written.empty()) {
        line.caution = said("Line {line}: no wording is given, “{wording}” stays until somebody confirms it.",
                            {{"line", line.line}, {"wording", std::get<Wording>(decal->content).text}});
        return;
    }
    auto lettered = m_letter(*decal, garment, written);
    if (!lettered.ok())
        row.wrong(named, lettered.error().message);
    else
        *decal = std::move(lettered).value();
}

// Of the file, or as the shop makes its prices.
void OrderLineReader::setPrice(ImportRow& row, GarmentDraft& garment) const {
    const std::string named = heading(OrderColumn::Price);
    if (!named.empty() && row.has(named)) {
        garment.price = row.money(named);
        return;
    }
    const Garment asked = asGarment(garment);
    const ShopFacts& facts = m_shop.facts;
    garment.price = askedPriceOf(facts, asked, garmentCost(facts, asked, routeOf(facts, asked)));
}

std::optional<LocalDate> OrderLineReader::day(ImportRow& row) const {
    const std::string named = heading(OrderColumn::Wanted);
    const std::string written = text(row, OrderColumn::Wanted);
    if (written.empty())
        return std::nullopt;
    constexpr std::size_t kDay = 10; // of "2026-11-25 15:00"
    const bool hasTime = written.size() > kDay && (written[kDay] == ' ' || written[kDay] == 'T');
    const std::string alone = hasTime ? written.substr(0, kDay) : written;
    auto day = parseIsoDate(alone);
    if (!day)
        day = dottedDay(alone);
    if (!day)
        row.wrong(named, said("“{typed}” is not a day. Write it as 2026-11-25 or 25.11.2026.",
                              {{"typed", written}}));
    return day;
}

SaidOfOrder OrderLineReader::saidOfOrder(ImportRow& row) const {
    return {text(row, OrderColumn::Customer), text(row, OrderColumn::Phone), text(row, OrderColumn::Paid),
            day(row), text(row, OrderColumn::Note)};
}

Money OrderLineReader::paid(ImportRow& row, const std::string& written, Money total) const {
    const std::string word = folded(written);
    if (word.empty() || word == "no" || word == "unpaid" || word == "false")
        return {};
    if (word == "yes" || word == "paid" || word == "true")
        return total;
    const std::string named = heading(OrderColumn::Paid);
    const bool isAmount = word.find_first_of("0123456789") != std::string::npos;
    const Money amount = isAmount ? row.money(named) : Money{};
    if (!isAmount)
        row.wrong(named, said("write yes, no or an amount; “{typed}” is neither.", {{"typed", written}}));
    else if (amount < Money{} || amount > total)
        row.wrong(named, said("0 or more and no more than the total of {total}.",
                              {{"total", Amount{total, m_shop.facts.settings.currency}}}));
    return amount;
}

} // namespace holdfast::db

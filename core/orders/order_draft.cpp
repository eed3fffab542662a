// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_draft.h"

#include "core/orders/order_sum.h"
#include "core/trade/limits.h"
#include "core/trade/paper_numbers.h"

#include <algorithm>

namespace holdfast {
namespace {

constexpr std::size_t kMostGarments = 200;
constexpr std::size_t kMostDecals = 12;
constexpr int kHighestLayer = 12;
constexpr std::int64_t kMostLines = 20;
constexpr std::size_t kMostLineCharacters = 60;
constexpr std::int64_t kMostUnits = 1'000'000; // of the currency, for a price
constexpr Days kFarthestPromise{5 * 366};

Money belowThisMuch(const Currency& currency) {
    Money limit{kMostUnits};
    for (int place = 0; place < currency.exponent; ++place)
        limit = limit * 10;
    return limit;
}

// Errors of one garment, said with its letter where there is more than one.
class GarmentCheck {
public:
    GarmentCheck(const OrderDraft& draft, std::size_t at, const ShopFacts& facts)
        : m_garment(draft.garments[at])
        , m_facts(facts) {
        if (draft.garments.size() > 1)
            m_letter = garmentLetter(static_cast<std::int64_t>(at) + 1);
    }

    std::optional<Error> firstWrong() const {
        if (const auto error = firstError({checkBlank(), checkPrice(), checkDecalCount()}))
            return ofGarment(*error);
        for (const DecalDraft& decal : m_garment.decals)
            if (const auto error = firstWrongOf(decal))
                return ofGarment(*error);
        return std::nullopt;
    }

private:
    Error ofGarment(Error error) const {
        if (!m_letter.empty())
            error.message = said("Garment {letter}: {wrong}",
                                 {{"letter", m_letter}, {"wrong", std::move(error.message)}});
        return error;
    }

    Result<Done> checkBlank() const {
        const BlankStyle* style = m_facts.styles.find(m_garment.style);
        if (!style)
            return fieldError("style", said("Choose one of the shop’s blank styles."));
        if (std::ranges::find(style->sizes, m_garment.size) == style->sizes.end())
            return fieldError("size", said("{style} has no size “{size}”.",
                                           {{"style", style->name}, {"size", m_garment.size}}));
        if (std::ranges::find(style->colours, m_garment.colour, &Colour::id) == style->colours.end())
            return fieldError("colour",
                              said("Choose one of the colours of {style}.", {{"style", style->name}}));
        return Done{};
    }

    Result<Done> checkPrice() const {
        const Currency& currency = m_facts.settings.currency;
        const Money limit = belowThisMuch(currency);
        if (m_garment.price < Money{} || m_garment.price >= limit)
            return fieldError("price", said("The price must be 0 or more and below {limit}.",
                                            {{"limit", Amount{limit, currency}}}));
        return Done{};
    }

    Result<Done> checkDecalCount() const {
        return within(
            static_cast<std::int64_t>(m_garment.decals.size()),
            {.field = "decals", .what = phrase("The number of decals"), .least = 1, .most = kMostDecals});
    }

    std::optional<Error> firstWrongOf(const DecalDraft& decal) const {
        if (!m_facts.films.find(decal.film))
            return fieldError("film", said("Choose one of the shop’s films."));
        return firstError({
            checkContent(decal.content),
            within(decal.width.value,
                   {.field = "width", .what = phrase("The width"), .least = 5, .most = 2000, .unit = " mm"}),
            within(
                decal.height.value,
                {.field = "height", .what = phrase("The height"), .least = 5, .most = 2000, .unit = " mm"}),
            within(decal.below.value, {.field = "below",
                                       .what = phrase("The distance below the seam"),
                                       .least = 0,
                                       .most = 2000,
                                       .unit = " mm"}),
            within(decal.aside.value, {.field = "aside",
                                       .what = phrase("The distance from the centre line"),
                                       .least = -1000,
                                       .most = 1000,
                                       .unit = " mm"}),
            within(decal.layer,
                   {.field = "layer", .what = phrase("The layer"), .least = 1, .most = kHighestLayer}),
        });
    }

    static Result<Done> checkContent(const DecalContent& content) {
        if (const auto* wording = std::get_if<Wording>(&content)) {
            const auto text =
                typedText(wording->text, {.field = "wording", .what = phrase("The wording"), .most = 60});
            return text.ok() ? Result<Done>{Done{}} : text.error();
        }
        const auto name = typedText(std::get<Artwork>(content).name,
                                    {.field = "artwork", .what = phrase("The artwork’s name"), .most = 60});
        return name.ok() ? Result<Done>{Done{}} : name.error();
    }

    const GarmentDraft& m_garment;
    const ShopFacts& m_facts;
    std::string m_letter; // empty for the only one
};

Result<Done> checkLine(const BillLine& line, const Currency& currency) {
    const bool isExtra = line.kind == BillLineKind::Extra;
    const auto words = typedText(
        line.words, {.field = "lines",
                     .what = isExtra ? phrase("What an extra is for") : phrase("The reason of a discount"),
                     .least = isExtra ? 1u : 0u,
                     .most = kMostLineCharacters});
    if (!words.ok())
        return words.error();
    if (const auto* share = std::get_if<Percentage>(&line.worth))
        return share->hundredths >= -kWholePercentage.hundredths &&
                       share->hundredths <= kWholePercentage.hundredths
                   ? Result<Done>{Done{}}
                   : fieldError("lines", said("A line must be no more than 100 % of the garments."));
    const Money amount = std::get<Money>(line.worth);
    const Money limit = belowThisMuch(currency);
    if (amount <= -limit || amount >= limit)
        return fieldError("lines",
                          said("A line must be below {limit}.", {{"limit", Amount{limit, currency}}}));
    return Done{};
}

Result<Done> checkDeposit(const OrderDraft& draft, const Currency& currency) {
    if (draft.isQuotation && draft.deposit != Money{})
        return fieldError("deposit", said("A quotation takes no money."));
    if (draft.deposit < Money{} || draft.deposit > draft.total())
        return fieldError("deposit",
                          said("The deposit must be 0 or more and no more than the total of {total}.",
                               {{"total", Amount{draft.total(), currency}}}));
    return Done{};
}

} // namespace

Garment asGarment(const GarmentDraft& draft) {
    Garment garment;
    garment.style = draft.style;
    garment.size = draft.size;
    garment.colour = draft.colour;
    garment.price = draft.price;
    for (const DecalDraft& from : draft.decals) {
        Decal decal;
        decal.id = {static_cast<std::int64_t>(garment.decals.size()) + 1};
        decal.film = from.film;
        decal.content = from.content;
        decal.placement = from.placement;
        decal.below = from.below;
        decal.aside = from.aside;
        decal.width = from.width;
        decal.height = from.height;
        decal.layer = from.layer;
        garment.decals.push_back(std::move(decal));
    }
    return garment;
}

Result<Done> checkCustomerOf(const OrderDraft& draft) {
    if (draft.customer)
        return Done{};
    const auto name =
        typedText(draft.customerName, {.field = "customerName", .what = phrase("The customer’s name")});
    if (!name.ok())
        return name.error();
    const auto phone =
        typedText(draft.customerPhone,
                  {.field = "customerPhone", .what = phrase("The phone number"), .least = 0, .most = 30});
    if (!phone.ok())
        return phone.error();
    return Done{};
}

Result<Done> checkGarmentCount(const OrderDraft& draft) {
    return within(
        static_cast<std::int64_t>(draft.garments.size()),
        {.field = "garments", .what = phrase("The number of garments"), .least = 1, .most = kMostGarments});
}

Result<Done> checkGarment(const OrderDraft& draft, std::size_t at, const ShopFacts& facts) {
    const auto error = GarmentCheck{draft, at, facts}.firstWrong();
    return error ? Result<Done>{*error} : Result<Done>{Done{}};
}

// A line alone; then all of them, for what is taken off may not be more than there is.
Result<Done> checkLines(const OrderDraft& draft, const Currency& currency) {
    if (auto count =
            within(static_cast<std::int64_t>(draft.lines.size()),
                   {.field = "lines", .what = phrase("The number of lines"), .least = 0, .most = kMostLines});
        !count.ok())
        return count;
    for (const BillLine& line : draft.lines)
        if (auto sound = checkLine(line, currency); !sound.ok())
            return sound;
    if (draft.total() < Money{})
        return fieldError("lines", said("More is taken off than the order comes to."));
    return Done{};
}

Result<Done> checkNote(const std::string& note) {
    const auto text = typedText(note, {.field = "note",
                                       .what = phrase("The note"),
                                       .least = 0,
                                       .most = kMostNoteCharacters,
                                       .mayBreakLines = true});
    return text.ok() ? Result<Done>{Done{}} : text.error();
}

Result<Done> checkPromisedTime(LocalTime promised, const Now& now) {
    if (promised < std::chrono::floor<Minutes>(now.local()))
        return fieldError("promised", said("The promise must not lie before now."));
    if (promised > now.local() + kFarthestPromise)
        return fieldError("promised", said("The promise must lie within five years from now."));
    return Done{};
}

Money OrderDraft::total() const {
    std::vector<Money> prices;
    for (const GarmentDraft& garment : garments)
        prices.push_back(garment.price);
    return sumOf(prices, lines, tax).total;
}

Result<Done> checkDraft(const OrderDraft& draft, const ShopFacts& facts, const Now& now) {
    // One after the other: the deposit is only compared with a total whose prices are sound.
    if (auto customer = checkCustomerOf(draft); !customer.ok())
        return customer;
    if (auto count = checkGarmentCount(draft); !count.ok())
        return count;
    for (std::size_t at = 0; at < draft.garments.size(); ++at)
        if (auto garment = checkGarment(draft, at, facts); !garment.ok())
            return garment;
    if (auto lines = checkLines(draft, facts.settings.currency); !lines.ok())
        return lines;
    if (auto deposit = checkDeposit(draft, facts.settings.currency); !deposit.ok())
        return deposit;
    if (auto promise = checkPromisedTime(draft.promised, now); !promise.ok())
        return promise;
    return checkNote(draft.note);
}

Phrase paidWords(PaidHow how) {
    switch (how) {
    case PaidHow::Cash:
        return phrase("cash");
    case PaidHow::Card:
        return phrase("card");
    case PaidHow::Transfer:
        return phrase("bank transfer");
    }
    return {};
}

} // namespace holdfast

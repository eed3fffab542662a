// SPDX-License-Identifier: GPL-3.0-or-later
// A change of an order in words, each field with what it was before.
#include "core/orders/order_change.h"

#include <algorithm>
#include <map>

namespace holdfast {

namespace {

Sentence contentWords(const DecalContent& content) {
    Decal decal;
    decal.content = content;
    return decal.describe();
}

std::string blankWordsOf(const GarmentDraft& garment, const ShopFacts& facts) {
    const BlankStyle* style = facts.styles.find(garment.style);
    const Colour* colour = style ? style->colour(garment.colour) : nullptr;
    return (style ? style->name : std::string{"?"}) + ", " + garment.size +
           (colour ? ", " + colour->name : std::string{});
}

std::string filmWords(FilmId id, const ShopFacts& facts) {
    const Film* film = facts.films.find(id);
    return film ? film->name() : std::string{"?"};
}

Sentence placeWords(const DecalDraft& decal) {
    if (decal.aside == Millimetres{0})
        return said("{placement}, {below} down",
                    {{"placement", placementName(decal.placement)}, {"below", decal.below}});
    return said(
        "{placement}, {below} down, {aside} aside",
        {{"placement", placementName(decal.placement)}, {"below", decal.below}, {"aside", decal.aside}});
}

// The changes of one garment that stays in the order.
class GarmentChanges {
public:
    GarmentChanges(std::string label, const ShopFacts& facts, std::vector<Sentence>& words)
        : m_label(std::move(label))
        , m_facts(facts)
        , m_words(words) {}

    void name(const GarmentDraft& before, const GarmentDraft& after) {
        if (after.isMadeAgain)
            m_words.push_back(said("{garment} is made again", {{"garment", m_label}}));
        if (blankWordsOf(before, m_facts) != blankWordsOf(after, m_facts))
            field(blankWordsOf(before, m_facts), blankWordsOf(after, m_facts));
        nameDecals(before, after);
        if (before.price != after.price)
            m_words.push_back(said("{garment} costs {after} (was {before})",
                                   {{"garment", m_label},
                                    {"after", Amount{after.price, m_facts.settings.currency}},
                                    {"before", Amount{before.price, m_facts.settings.currency}}}));
    }

private:
    void field(const std::string& before, const std::string& after) {
        m_words.push_back(said("{garment} is {after} (was {before})",
                               {{"garment", m_label}, {"after", after}, {"before", before}}));
    }

    void nameDecals(const GarmentDraft& before, const GarmentDraft& after) {
        for (const DecalDraft& was : before.decals) {
            const auto now = std::ranges::find(after.decals, was.taken, &DecalDraft::taken);
            if (now == after.decals.end())
                m_words.push_back(said("{garment}: {decal} left off",
                                       {{"garment", m_label}, {"decal", contentWords(was.content)}}));
            else
                nameDecal(was, *now);
        }
        for (const DecalDraft& now : after.decals)
            if (!now.taken)
                m_words.push_back(
                    said("{garment}: {decal} added in {film}", {{"garment", m_label},
                                                                {"decal", contentWords(now.content)},
                                                                {"film", filmWords(now.film, m_facts)}}));
    }

    void nameDecal(const DecalDraft& before, const DecalDraft& after) {
        const Sentence decal = contentWords(after.content);
        const auto values = [&](Value was, Value now) {
            return std::vector<NamedValue>{{"garment", m_label},
                                           {"decal", decal},
                                           {"after", std::move(now)},
                                           {"before", std::move(was)}};
        };
        if (contentWords(before.content) != decal)
            m_words.push_back(said(
                "{garment}: {decal} (was {before})",
                {{"garment", m_label}, {"decal", decal}, {"before", asAlone(contentWords(before.content))}}));
        else if (before.content != after.content)
            m_words.push_back(
                said("{garment}: {decal} in other letters", {{"garment", m_label}, {"decal", decal}}));
        if (before.film != after.film)
            m_words.push_back(said("{garment}: {decal} in {after} (was {before})",
                                   values(filmWords(before.film, m_facts), filmWords(after.film, m_facts))));
        if (before.width != after.width || before.height != after.height)
            m_words.push_back(
                said("{garment}: {decal} {after} (was {before})",
                     values(Extent{before.width, before.height}, Extent{after.width, after.height})));
        if (placeWords(before) != placeWords(after))
            m_words.push_back(said("{garment}: {decal} at {after} (was {before})",
                                   values(withinLine(placeWords(before)), withinLine(placeWords(after)))));
        if (before.layer != after.layer)
            m_words.push_back(said("{garment}: {decal} on layer {after} (was {before})",
                                   {{"garment", m_label},
                                    {"decal", decal},
                                    {"after", Numeral{after.layer}},
                                    {"before", Numeral{before.layer}}}));
    }

    std::string m_label;
    const ShopFacts& m_facts;
    std::vector<Sentence>& m_words;
};

void nameOrder(const OrderDraft& before, const OrderDraft& after, std::vector<Sentence>& words) {
    if (before.customer != after.customer)
        words.push_back(said("for {after} (was {before})",
                             {{"after", after.customerName}, {"before", before.customerName}}));
    if (before.promised != after.promised)
        words.push_back(said("promised for {after} (was {before})",
                             {{"after", after.promised}, {"before", before.promised}}));
    if (before.note != after.note)
        words.push_back(after.note.empty()    ? said("note taken off")
                        : before.note.empty() ? said("note written")
                                              : said("note changed"));
}

void nameLines(const OrderDraft& before, const OrderDraft& after, const Currency& currency,
               std::vector<Sentence>& words) {
    const auto now = [&](const BillLine& was) {
        return std::ranges::find(after.lines, was.taken, &BillLine::taken);
    };
    for (const BillLine& was : before.lines)
        if (const auto line = now(was); line == after.lines.end())
            words.push_back(said("{line} left off", {{"line", lineWords(was, currency)}}));
        else if (*line != was)
            words.push_back(said("{after} (was {before})", {{"after", lineWords(*line, currency)},
                                                            {"before", lineWords(was, currency)}}));
    for (const BillLine& line : after.lines)
        if (!line.taken)
            words.push_back(said("{line} added", {{"line", lineWords(line, currency)}}));
}

// As many of one kind as were added at once.
void nameAdded(const OrderDraft& after, const ShopFacts& facts, std::vector<Sentence>& words) {
    std::map<std::string, std::int64_t> added;
    for (const GarmentDraft& garment : after.garments)
        if (!garment.taken)
            ++added[blankWordsOf(garment, facts)];
    for (const auto& [blank, count] : added)
        words.push_back(count == 1 ? said("{blank} added", {{"blank", blank}})
                                   : said("{n} × {blank} added", {{"n", Numeral{count}}, {"blank", blank}}));
}

} // namespace

std::vector<Sentence> changesBetween(const OrderDraft& before, const OrderDraft& after, OrderId order,
                                     const ShopFacts& facts) {
    std::vector<Sentence> words;
    nameOrder(before, after, words);
    for (const GarmentDraft& was : before.garments) {
        const Garment* garment = facts.garments.find(*was.taken);
        const std::string label =
            garment ? facts.labelOf(*garment) : std::to_string(facts.orders.at(order).number);
        const GarmentDraft* now = takenGarment(after, *was.taken);
        if (now)
            GarmentChanges{label, facts, words}.name(was, *now);
        else
            words.push_back(said("{garment} cancelled ({blank})",
                                 {{"garment", label}, {"blank", blankWordsOf(was, facts)}}));
    }
    nameAdded(after, facts, words);
    nameLines(before, after, facts.settings.currency, words);
    return words;
}

Sentence lostWords(const WorkLost& lost, const ShopFacts& facts) {
    const std::string label = facts.labelOf(facts.garments.at(lost.garment));
    if (lost.isPressed)
        return said("{garment} has been at the press: its blank and its film are lost.",
                    {{"garment", label}});
    std::vector<Sentence> decals;
    for (const Decal* decal : lost.decals)
        decals.push_back(said("{decal}, {size}",
                              {{"decal", decal->describe()}, {"size", Extent{decal->width, decal->height}}}));
    if (lost.again == Seconds{0})
        return said("{garment}: cut in vain: {decals}.", {{"garment", label}, {"decals", decals}});
    constexpr std::int64_t kMinute = 60;
    const std::int64_t minutes = (lost.again.count() + kMinute - 1) / kMinute;
    return said("{garment}: cut in vain: {decals}. To cut again takes about {minutes} min.",
                {{"garment", label}, {"decals", decals}, {"minutes", minutes}});
}

} // namespace holdfast

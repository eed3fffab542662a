// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_blanks.h"

#include "db/actions/blank_actions.h"
#include "db/demo/demo_workshop.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <array>
#include <memory>
#include <optional>
#include <string_view>

namespace holdfast::db::demo {
namespace {

using namespace literals;

constexpr int kFirstDelivery = -86;
constexpr int kSecondDelivery = -24;
constexpr int kThirdDelivery = -5;

// Units in the order of the style's sizes; what is not named is none.
struct Delivery {
    int day;
    const char* style;
    const char* colour;
    std::array<int, 7> units;
};

constexpr std::array kDeliveries{
    Delivery{kFirstDelivery, "Tee", "Fog", {2, 4, 6, 5, 1, 1}},
    Delivery{kFirstDelivery, "Tee", "Ink", {1, 4, 5, 6, 3, 0, 1}},
    Delivery{kFirstDelivery, "Tee", "Moss", {0, 2, 0, 2, 0, 1}},
    Delivery{kFirstDelivery, "Tee", "Brick", {0, 4, 4, 1, 2}},
    Delivery{kFirstDelivery, "Tee", "Chalk", {2, 5, 5, 5, 2, 1, 1}},
    Delivery{kFirstDelivery, "Tee", "Slate", {1, 0, 3, 1, 1}},
    Delivery{kFirstDelivery, "Tee", "Rose", {0, 2}},
    Delivery{kFirstDelivery, "Long sleeve", "Brick", {2, 3, 0, 1}},
    Delivery{kFirstDelivery, "Long sleeve", "Ink", {1, 3, 3, 2, 1}},
    Delivery{kFirstDelivery, "Long sleeve", "Chalk", {2, 2, 2}},
    Delivery{kFirstDelivery, "Zip hoodie", "Ink", {1, 3, 3, 1}},
    Delivery{kFirstDelivery, "Zip hoodie", "Reed", {2, 3, 1, 1}},
    Delivery{kFirstDelivery, "Tote", "Oat", {24}},
    Delivery{kFirstDelivery, "Tote", "Slate", {10}},
    Delivery{kFirstDelivery, "Bodysuit", "Rose", {2, 4, 2, 1}},
    Delivery{kFirstDelivery, "Bodysuit", "Chalk", {2, 3, 3, 2}},
    Delivery{kFirstDelivery, "Bib", "Chalk", {10}},
    Delivery{kFirstDelivery, "Bib", "Fog", {6}},
    Delivery{kFirstDelivery, "Apron", "Slate", {5}},
    Delivery{kFirstDelivery, "Apron", "Oat", {4}},
    Delivery{kSecondDelivery, "Tee", "Fog", {0, 3, 4, 4, 0, 1}},
    Delivery{kSecondDelivery, "Tee", "Ink", {0, 3, 4, 4, 2}},
    Delivery{kSecondDelivery, "Tee", "Brick", {0, 2, 2, 0, 1}},
    Delivery{kSecondDelivery, "Tee", "Chalk", {1, 3, 4, 4, 4}},
    Delivery{kSecondDelivery, "Long sleeve", "Brick", {0, 1, 3, 1}},
    Delivery{kSecondDelivery, "Zip hoodie", "Ink", {0, 1, 2, 2}},
    Delivery{kSecondDelivery, "Zip hoodie", "Reed", {1, 2}},
    Delivery{kSecondDelivery, "Tote", "Oat", {30}},
    Delivery{kSecondDelivery, "Bib", "Fog", {6}},
    Delivery{kSecondDelivery, "Bodysuit", "Rose", {2, 2}},
    Delivery{kSecondDelivery, "Apron", "Slate", {4}},
    Delivery{kSecondDelivery, "Cap", "Ink", {8}},
    Delivery{kSecondDelivery, "Cap", "Moss", {4}},
    Delivery{kThirdDelivery, "Tee", "Fog", {1, 3, 2, 0, 2}},
    Delivery{kThirdDelivery, "Tee", "Ink", {0, 4, 0, 0, 0, 1}},
    Delivery{kThirdDelivery, "Tee", "Moss", {0, 2, 5, 3}},
    Delivery{kThirdDelivery, "Tee", "Brick", {2, 0, 3, 2, 2}},
    Delivery{kThirdDelivery, "Tee", "Chalk", {0, 4, 4, 4, 3}},
    Delivery{kThirdDelivery, "Tee", "Slate", {0, 3, 1, 0, 1}},
    Delivery{kThirdDelivery, "Tee", "Rose", {1, 0, 2, 0, 1}},
    Delivery{kThirdDelivery, "Long sleeve", "Moss", {2, 4, 1}},
};

using Colours = std::vector<std::string_view>;

const Colours kDark{"Ink", "Slate"};
const Colours kLight{"Fog", "Chalk", "Oat"};
const Colours kGreen{"Moss", "Reed"};
const Colours kRed{"Brick", "Rose"};

void receive(Script& script, const Delivery& delivery) {
    const ShopFacts facts = loadFactsOf(script.shop().connection(), {});
    const BlankStyle& style = facts.styles.at(script.named.styles.at(delivery.style));
    const auto colour = std::ranges::find(style.colours, delivery.colour, &Colour::name);
    for (std::size_t at = 0; at < style.sizes.size(); ++at)
        if (delivery.units[at] > 0) {
            done(receiveBlanks(script.shop(), style.id, style.sizes[at], colour->id, delivery.units[at],
                               script.now()));
            script.wait(Seconds{15});
        }
}

bool isUnwashed(const BlankStyle& style, const BlankLot& lot) {
    return style.washedFirst() && !lot.lastLoad && lot.unitsLeft > 0;
}

// What goes into a load: unwashed blanks that are wanted, as many as the washer holds.
template <class Wanted>
std::vector<WashPart> partsFor(const ShopFacts& facts, Wanted&& isWanted) {
    std::vector<WashPart> parts;
    std::int64_t grams = facts.settings.washerHolds.value;
    for (const BlankLot& lot : facts.lots) {
        const BlankStyle& style = facts.styles.at(lot.style);
        const std::int64_t units = std::min(lot.unitsLeft, grams / style.weight.value);
        if (units < 1 || !isUnwashed(style, lot) || !isWanted(style, lot))
            continue;
        parts.push_back({lot.id, units});
        grams -= units * style.weight.value;
    }
    return parts;
}

struct Load {
    int day;
    Seconds at;
    int dryDay;
    Seconds dryAt;
    bool softener = false;
    bool isFoundDry = true;
};

template <class Wanted>
void wash(Script& script, const Load& load, Wanted isWanted) {
    const auto id = std::make_shared<std::optional<WashLoadId>>();
    script.at(load.day, load.at, [&script, load, isWanted, id] {
        WashPlan plan;
        plan.parts = partsFor(loadFactsOf(script.shop().connection(), {}), isWanted);
        if (plan.parts.empty())
            return;
        plan.detergent = "mild, unscented";
        plan.softener = load.softener;
        *id = done(startWash(script.shop(), plan));
    });
    if (load.isFoundDry)
        script.at(load.dryDay, load.dryAt, [&script, id] {
            if (*id)
                done(markDry(script.shop(), **id));
        });
}

// In the evening, dry by the next morning.
void washColours(Script& script, int day, const Colours& colours) {
    wash(script, {day, clockAt(18, 20), day + 1, clockAt(8, 12)},
         [&colours](const BlankStyle& style, const BlankLot& lot) {
             return std::ranges::find(colours, style.colour(lot.colour)->name) != colours.end();
         });
}

auto kind(const char* styleName, const char* size, const char* colour) {
    return [=](const BlankStyle& style, const BlankLot& lot) {
        return style.name == styleName && lot.size == size && style.colour(lot.colour)->name == colour;
    };
}

void writeLoads(Script& script) {
    const std::pair<int, const Colours*> evenings[] = {
        {-86, &kDark},  {-85, &kLight}, {-84, &kDark}, {-83, &kLight}, {-82, &kGreen}, {-81, &kRed},
        {-80, &kDark},  {-79, &kLight}, {-78, &kDark}, {-77, &kLight}, {-76, &kRed},   {-24, &kDark},
        {-23, &kLight}, {-22, &kRed},   {-21, &kDark}, {-20, &kLight}, {-19, &kGreen},
    };
    for (const auto& [day, colours] : evenings)
        washColours(script, day, *colours);

    // Someone took the wrong bottle.
    Load wrong{-3, clockAt(18, 5), -2, clockAt(9, 0)};
    wrong.softener = true;
    wash(script, wrong, kind("Tee", "S", "Slate"));

    wash(script, {-1, clockAt(18, 30), 0, clockAt(9, 24, 30)}, kind("Tee", "M", "Moss"));
    Load damp{-1, clockAt(20, 10), 0, {}};
    damp.isFoundDry = false;
    wash(script, damp, kind("Long sleeve", "M", "Moss"));
}

const BlankLot* lotOf(const ShopFacts& facts, LocalDate received, const char* style, const char* size,
                      const char* colour) {
    for (const BlankLot& lot : facts.lots)
        if (lot.receivedOn == received && kind(style, size, colour)(facts.styles.at(lot.style), lot))
            return &lot;
    throw Stopped{plainError(said("There is no lot of {style}, {size}, {colour}.",
                                  {{"style", style}, {"size", size}, {"colour", colour}}))};
}

void writeCounts(Script& script) {
    script.at(-21, clockAt(9, 10), [&script] {
        const ShopFacts facts = loadFactsOf(script.shop().connection(), {});
        const BlankLot* lot = lotOf(facts, script.day(kSecondDelivery), "Long sleeve", "L", "Brick");
        done(measureShrinkage(script.shop(), lot->id, {720_mm, 678_mm, 560_mm, 549_mm}));
    });
    script.at(-58, clockAt(16, 0), [&script] {
        const ShopFacts facts = loadFactsOf(script.shop().connection(), {});
        const BlankLot* lot = lotOf(facts, script.day(kFirstDelivery), "Tee", "S", "Brick");
        done(correctCount(script.shop(), lot->id, lot->unitsLeft - 1, "one has a pulled thread"));
    });
}

} // namespace

void writeRail(Script& script) {
    for (const Delivery& delivery : kDeliveries)
        script.at(delivery.day, clockAt(10, 45), [&script, &delivery] { receive(script, delivery); });
    writeLoads(script);
    writeCounts(script);
}

} // namespace holdfast::db::demo

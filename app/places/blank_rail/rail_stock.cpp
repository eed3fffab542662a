// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/rail_stock.h"

#include "core/shop/lot_state.h"

#include <algorithm>
#include <map>

namespace holdfast::app {

namespace {

bool isAt(const BlankLot& lot, const RailSpot& spot) {
    return lot.style == spot.style && lot.size == spot.size && lot.colour == spot.colour;
}

// Its unit still hangs on the rail: it is open and not begun.
bool wantsBlank(const ReckonedShop& shop, const Garment& garment) {
    return shop.facts.orderOf(garment).isOpen() && !garment.handedOverAt &&
           shop.facts.stepsOf(garment).empty();
}

bool isToWash(LotState state) {
    return state == LotState::Unwashed || state == LotState::HasSoftener;
}

// Lots of a spot that can go into the washer, the oldest first.
std::vector<const BlankLot*> washableLots(const ShopFacts& facts, const RailSpot& spot) {
    std::vector<const BlankLot*> lots;
    for (const BlankLot& lot : facts.lots)
        if (isAt(lot, spot) && lot.unitsLeft > 0 && isToWash(stateOf(facts, lot)))
            lots.push_back(&lot);
    std::ranges::sort(lots, {}, [](const BlankLot* lot) { return std::pair{lot->receivedOn, lot->id}; });
    return lots;
}

} // namespace

RailCount& RailCount::operator+=(const RailCount& other) {
    washed += other.washed;
    drying += other.drying;
    unwashed += other.unwashed;
    wanted += other.wanted;
    return *this;
}

std::vector<StyleRail> countRail(const ReckonedShop& shop) {
    const ShopFacts& facts = shop.facts;
    std::map<RailSpot, RailCount> counts;
    for (const BlankLot& lot : facts.lots) {
        RailCount& count = counts[{lot.style, lot.size, lot.colour}];
        const LotState state = stateOf(facts, lot);
        (state == LotState::Drying  ? count.drying
         : state == LotState::Ready ? count.washed
                                    : count.unwashed) += lot.unitsLeft;
    }
    for (const Garment& garment : facts.garments)
        if (wantsBlank(shop, garment))
            ++counts[{garment.style, garment.size, garment.colour}].wanted;

    const auto isThere = [&](BlankStyleId style, ColourId colour) {
        return std::ranges::any_of(counts, [&](const auto& each) {
            return each.first.style == style && each.first.colour == colour &&
                   (each.second.all() > 0 || each.second.wanted > 0);
        });
    };
    std::vector<StyleRail> rail;
    for (const BlankStyle& each : facts.styles) {
        auto hangs = std::make_shared<BlankStyle>(each);
        std::erase_if(hangs->colours, [&](const Colour& colour) {
            return (each.isRetired || colour.isRetired) && !isThere(each.id, colour.id);
        });
        if (each.isRetired && hangs->colours.empty())
            continue;
        const BlankStyle& style = *hangs;
        StyleRail hung{hangs, {}, {}, {}, 0};
        for (const Colour& colour : style.colours) {
            std::vector<RailCount> row;
            RailCount sum;
            for (const std::string& size : style.sizes) {
                const RailCount count = counts[{style.id, size, colour.id}];
                row.push_back(count);
                sum += count;
                hung.spotsShort += count.isShort();
            }
            hung.cells.push_back(std::move(row));
            hung.byColour.push_back(sum);
            hung.total += sum;
        }
        rail.push_back(std::move(hung));
    }
    return rail;
}

std::int64_t washableAt(const ShopFacts& facts, const RailSpot& spot) {
    std::int64_t units = 0;
    for (const BlankLot* lot : washableLots(facts, spot))
        units += lot->unitsLeft;
    return units;
}

std::vector<db::WashPart> partsFor(const ShopFacts& facts, const RailSpot& spot, std::int64_t units) {
    std::vector<const BlankLot*> lots = washableLots(facts, spot);
    const auto kept = [&](const BlankLot* lot) { return lot->unitsLeft - facts.freeUnits(*lot); };
    std::ranges::stable_sort(lots, std::greater<>{}, kept);
    std::vector<db::WashPart> parts;
    for (const BlankLot* lot : lots) {
        const std::int64_t taken = std::min(units, lot->unitsLeft);
        if (taken > 0)
            parts.push_back({lot->id, taken});
        units -= taken;
    }
    return parts;
}

std::vector<const Garment*> waitingAt(const ReckonedShop& shop, const RailSpot& spot) {
    std::vector<const Garment*> waiting;
    for (const Garment& garment : shop.facts.garments) {
        if (RailSpot{garment.style, garment.size, garment.colour} != spot || !wantsBlank(shop, garment))
            continue;
        const BlankLot* lot = garment.lot ? shop.facts.lots.find(*garment.lot) : nullptr;
        if (!lot || stateOf(shop.facts, *lot) != LotState::Ready)
            waiting.push_back(&garment);
    }
    std::ranges::stable_sort(waiting, {},
                             [&](const Garment* garment) { return shop.facts.orderOf(*garment).promised; });
    return waiting;
}

bool mayBleed(std::uint32_t rgb) {
    const int red = static_cast<int>(rgb >> 16U & 0xffU);
    const int green = static_cast<int>(rgb >> 8U & 0xffU);
    const int blue = static_cast<int>(rgb & 0xffU);
    const int strongest = std::max({red, green, blue});
    const int weakest = std::min({red, green, blue});
    const bool isDark = strongest < 100;
    const bool isStrong = strongest > 0 && (strongest - weakest) * 100 / strongest > 60;
    return isDark || isStrong;
}

} // namespace holdfast::app

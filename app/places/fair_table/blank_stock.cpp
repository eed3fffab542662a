// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/blank_stock.h"

#include <algorithm>
#include <tuple>

namespace holdfast::app {

namespace {

BlankStock stockOf(const ShopFacts& facts, const BlankLot& lot) {
    BlankStock stock;
    const std::int64_t units = facts.freeUnits(lot);
    const BlankStyle* style = facts.styles.find(lot.style);
    const WashLoad* load = facts.lastLoadOf(lot);
    if (style && !style->washedFirst())
        stock.washed = units;
    else if (!load || (load->isDry() && load->leftSoftener()))
        stock.unwashed = units;
    else if (!load->isDry())
        stock.drying = units;
    else
        stock.washed = units;
    return stock;
}

} // namespace

BlankStock& BlankStock::operator+=(const BlankStock& other) {
    washed += other.washed;
    drying += other.drying;
    unwashed += other.unwashed;
    return *this;
}

BlankStock BlankStock::without(std::int64_t units) const {
    BlankStock left = *this;
    for (std::int64_t BlankStock::* kind :
         {&BlankStock::washed, &BlankStock::drying, &BlankStock::unwashed}) {
        const std::int64_t taken = std::min(left.*kind, units);
        left.*kind -= taken;
        units -= taken;
    }
    return left;
}

BlankRailStock::BlankRailStock(const ShopFacts& facts) {
    for (const BlankLot& lot : facts.lots)
        m_stock[{lot.style, lot.size, lot.colour}] += stockOf(facts, lot);
}

BlankStock BlankRailStock::of(const BlankKind& kind) const {
    const auto found = m_stock.find(kind);
    return found == m_stock.end() ? BlankStock{} : found->second;
}

BlankStock BlankRailStock::ofSize(BlankStyleId style, const std::string& size) const {
    BlankStock sum;
    for (const auto& [kind, stock] : m_stock)
        if (kind.style == style && kind.size == size)
            sum += stock;
    return sum;
}

BlankStock BlankRailStock::ofColour(BlankStyleId style, ColourId colour) const {
    BlankStock sum;
    for (const auto& [kind, stock] : m_stock)
        if (kind.style == style && kind.colour == colour)
            sum += stock;
    return sum;
}

BlankKind BlankRailStock::likeliest(const BlankStyle& style, const std::string& size, ColourId colour) const {
    BlankKind best{style.id, size.empty() && !style.sizes.empty() ? style.sizes.front() : size,
                   !colour.isSet() && !style.colours.empty() ? style.colours.front().id : colour};
    for (const auto& [kind, stock] : m_stock) {
        const bool isOpen = kind.style == style.id && (size.empty() || kind.size == size) &&
                            (!colour.isSet() || kind.colour == colour);
        const BlankStock most = of(best);
        if (isOpen && std::tuple(stock.washed, stock.total()) > std::tuple(most.washed, most.total()))
            best = kind;
    }
    return best;
}

} // namespace holdfast::app

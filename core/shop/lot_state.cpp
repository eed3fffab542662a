// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/lot_state.h"

#include "core/facts/shop_facts.h"

namespace holdfast {

LotState stateOf(const ShopFacts& facts, const BlankLot& lot) {
    const WashLoad* load = facts.lastLoadOf(lot);
    if (load && !load->isDry())
        return LotState::Drying;
    if (!facts.styles.at(lot.style).washedFirst())
        return LotState::Ready;
    if (!load)
        return LotState::Unwashed;
    return load->leftSoftener() ? LotState::HasSoftener : LotState::Ready;
}

} // namespace holdfast

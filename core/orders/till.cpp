// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/till.h"

namespace holdfast {

void DayMoney::add(PaidHow how, MoneyKind kind, Money amount) {
    by[static_cast<std::size_t>(how)][static_cast<std::size_t>(kind)] += amount;
}

Money DayMoney::of(PaidHow how) const {
    return in(how)-out(how);
}

Money DayMoney::in(PaidHow how) const {
    const auto& kinds = by[static_cast<std::size_t>(how)];
    return kinds[static_cast<std::size_t>(MoneyKind::Deposit)] +
           kinds[static_cast<std::size_t>(MoneyKind::Payment)];
}

Money DayMoney::out(PaidHow how) const {
    return -by[static_cast<std::size_t>(how)][static_cast<std::size_t>(MoneyKind::Refund)];
}

Sentence tillDifferenceWords(Money difference, const Currency& currency) {
    if (difference > Money{})
        return said("{amount} too much", {{"amount", Amount{difference, currency}}});
    if (difference < Money{})
        return said("{amount} is missing", {{"amount", Amount{-difference, currency}}});
    return said("as it should be");
}

} // namespace holdfast

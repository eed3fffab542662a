// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/order_message.h"

#include "core/shop/promise_again.h"

#include <algorithm>

namespace holdfast {

namespace {

bool isAllPressed(const ReckonedShop& shop, OrderId order) {
    const auto garments = shop.facts.garmentsOf(order);
    return std::ranges::all_of(garments, [&](const Garment* garment) {
        return garment->handedOverAt || shop.of(garment->id).progress.isPressed();
    });
}

Sentence aboutDay(const ReckonedShop& shop, const Order& order) {
    const std::vector<NamedValue> known{
        {"order", Numeral{order.number}}, {"shop", shop.facts.settings.shopName}, {"day", order.promised}};
    if (order.state == OrderState::Quoted)
        return said("Your quotation {order} at {shop}: it would be ready from {day}.", known);
    const auto soonest = promiseAgain(shop, order.id);
    if (soonest.ok() && soonest->readyAt <= order.promised)
        return isAllPressed(shop, order.id)
                   ? said("Your order {order} at {shop} is made. It can be collected from {day}.", known)
                   : said("Your order {order} at {shop} will be ready from {day}.", known);
    if (!soonest.ok())
        return said("Your order {order} at {shop} will be later than {day}, as promised. I am sorry, and "
                    "will write again as soon as I know its day.",
                    known);
    std::vector<NamedValue> late = known;
    late.push_back({"new", soonest->readyAt});
    return isAllPressed(shop, order.id)
               ? said("Your order {order} at {shop} is made. It can be collected from {new}, not from {day} "
                      "as promised. I am sorry.",
                      late)
               : said("Your order {order} at {shop} will be ready from {new}, not from {day} as promised. I "
                      "am sorry.",
                      late);
}

} // namespace

Sentence orderMessage(const ReckonedShop& shop, OrderId id) {
    const Order& order = shop.facts.orders.at(id);
    Sentence message = aboutDay(shop, order);
    if (order.state == OrderState::Confirmed && order.owed() > Money{})
        message =
            oneAfterTheOther(message, said("{amount} is still to be paid.",
                                           {{"amount", Amount{order.owed(), shop.facts.settings.currency}}}));
    if (!shop.facts.settings.collectAt.empty())
        message =
            oneAfterTheOther(message, said("Collect: {where}", {{"where", shop.facts.settings.collectAt}}));
    return message;
}

} // namespace holdfast

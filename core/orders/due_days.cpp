// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/due_days.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace holdfast {

namespace {

Sentence summaryOf(const Order& order, const Customer* customer, std::int64_t garments) {
    if (customer == nullptr)
        return said("{order}, {n} garment|{order}, {n} garments",
                    {{"order", std::to_string(order.number)}, {"n", garments}});
    return said("{order} {customer}, {n} garment|{order} {customer}, {n} garments",
                {{"order", std::to_string(order.number)}, {"customer", customer->name}, {"n", garments}});
}

} // namespace

std::vector<DueDay> dueDays(const ShopFacts& facts, const Now& now, Names names) {
    std::map<OrderId, std::int64_t> garments;
    for (const Garment& garment : facts.garments)
        ++garments[garment.order];
    std::vector<const Order*> open;
    for (const Order& order : facts.orders)
        if (order.isOpen())
            open.push_back(&order);
    std::ranges::sort(open, {},
                      [](const Order* order) { return std::tuple(order->promised, order->number); });
    std::vector<DueDay> days;
    for (const Order* order : open)
        days.push_back(
            {order->id, now.toInstant(order->promised),
             summaryOf(*order, names == Names::Shown ? facts.customers.find(order->customer) : nullptr,
                       garments[order->id]),
             order->state == OrderState::Quoted});
    return days;
}

std::string dueDaysCalendar(const std::vector<DueDay>& days, std::int64_t shop, Instant written,
                            const std::function<std::string(const Sentence&)>& inWords) {
    std::vector<CalendarEvent> events;
    for (const DueDay& day : days)
        events.push_back({"order-" + std::to_string(day.order.value) + "@shop-" + std::to_string(shop),
                          day.at, inWords(day.summary), day.isQuotation});
    return calendarText(events, written);
}

} // namespace holdfast

#include "db/exchange/keep_their_orders.h"

#include "core/trade/unit_words.h"
#include "db/forgetting/forgotten_people.h"

#include <vector>

namespace holdfast::db {

namespace {

// Those of the news that are not forgotten here.
std::set<std::int64_t> customersForgottenBy(Connection& connection, NewsReader& news) {
    std::set<std::int64_t> customers;
    for (std::int64_t number = 1; number <= news.label().entries; ++number)
        for (const std::int64_t customer : peopleForgottenIn(news.entry(number).changeset).customers)
            if (connection.number("SELECT COUNT(*) FROM forgotten_customer WHERE customer_id = ?1",
                                  customer) == 0)
                customers.insert(customer);
    return customers;
}

struct OpenOrder {
    OrderId id;
    CustomerId customer;
};

std::vector<OpenOrder> openOrdersOf(Connection& connection, const std::set<std::int64_t>& customers) {
    std::vector<OpenOrder> orders;
    for (const std::int64_t customer : customers) {
        Query rows = connection.query("SELECT id FROM shop_order WHERE customer_id = ?1 "
                                      "AND state IN ('quoted', 'confirmed')",
                                      customer);
        while (rows.step())
            orders.push_back({rows.id<OrderId>(0), CustomerId{customer}});
    }
    return orders;
}

} // namespace

Result<Done> keepOrdersOfForgotten(Shop& shop, NewsReader& news) {
    const auto customers = customersForgottenBy(shop.connection(), news);
    const auto orders = openOrdersOf(shop.connection(), customers);
    if (orders.empty())
        return Done{};
    return shop.act([&](Writer& writer) -> Result<Done> {
        for (const OpenOrder& order : orders) {
            const auto again = writer.newId<CustomerId>();
            writer.connection().run(
                "INSERT INTO customer (id, name, phone) SELECT ?1, name, phone FROM customer WHERE id = ?2",
                again, order.customer);
            writer.connection().run("UPDATE shop_order SET customer_id = ?2 WHERE id = ?1", order.id, again);
            writer.concerns(order.id);
            writer.concerns(again);
        }
        writer.describe(countWords(static_cast<std::int64_t>(orders.size()), "open order") +
                        " of a customer who was forgotten on another laptop kept");
        return Done{};
    });
}

} // namespace holdfast::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// All that a shop knows of one customer, and who is found by what is typed. All functions throw
// SqliteFailure; Shop::read is their door.

#include "core/facts/order.h"
#include "core/quality/claim.h"
#include "db/tables/order_book.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

struct OrderOfCustomer {
    OrderLine line;
    Instant takenAt{};
};

struct ClaimOfCustomer {
    OrderId order;
    std::string garment; // "418-b"
    Claim claim;
};

// Garments of orders that were neither cancelled nor only quoted.
struct SizeTaken {
    std::string style;
    std::string size;
    std::int64_t garments = 0;
};

struct CustomerPage {
    Customer customer;
    std::string note;
    bool isForgotten = false;
    std::vector<std::string> alsoCalled; // names of those joined to them, where they are others
    std::vector<OrderOfCustomer> orders; // the newest first
    Money owed;                          // on all of them
    std::vector<ClaimOfCustomer> claims; // the latest reported first
    std::vector<SizeTaken> sizes;        // by style, the size taken most first
};

// Of the customer whom this one is (joined_customers.h); none where the shop has no such row.
std::optional<CustomerPage> customerPage(Connection& connection, CustomerId customer);

struct CustomerFound {
    Customer customer;
    std::int64_t orders = 0;
    Money owed;
};

// Those whom the search finds by name or phone number, those of the newest orders first.
std::vector<CustomerFound> customersFound(Connection& connection, const OrderQuery& wanted,
                                          std::string_view typed, int most);

} // namespace holdfast::db

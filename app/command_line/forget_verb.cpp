// SPDX-License-Identifier: GPL-3.0-or-later
// A customer forgotten without a window: nothing is asked, and what could be mistaken is refused.
#include "app/command_line/verbs.h"
#include "app/desk/backups_beside.h"
#include "core/trade/unit_words.h"
#include "db/actions/forget_customer.h"
#include "db/backups/backups.h"
#include "db/backups/backups_naming.h"
#include "db/tables/customers_called.h"
#include "db/tables/facts.h"

namespace holdfast::app {

namespace {

std::string listed(const std::vector<std::string>& parts) {
    std::string all;
    for (const std::string& part : parts)
        all += (all.empty() ? "" : ", ") + part;
    return all;
}

std::string numbersOf(const std::vector<std::int64_t>& orders) {
    std::vector<std::string> numbers;
    for (const std::int64_t number : orders)
        numbers.push_back(std::to_string(number));
    return listed(numbers);
}

std::string ordersOf(const std::vector<std::int64_t>& orders) {
    return orders.empty() ? "no order" : (orders.size() == 1 ? "order " : "orders ") + numbersOf(orders);
}

Error notOne(const std::string& who, const std::vector<db::CustomerCalled>& called) {
    if (called.empty())
        return plainError(
            said("The shop has no customer “{who}”. Name them in full, or by their phone number "
                 "or the number of one of their orders.",
                 {{"who", who}}));
    std::string lines;
    for (const db::CustomerCalled& each : called)
        lines += "\n  " + each.customer.name +
                 (each.customer.phone.empty() ? "" : ", " + each.customer.phone) + ", " +
                 ordersOf(each.orders);
    return plainError(
        said("“{who}” may be any of these. Nobody was forgotten: name one by their phone number "
             "or the number of one of their orders.{customers}",
             {{"who", who}, {"customers", lines}}));
}

std::string backupsInLines(const std::vector<db::BackupNaming>& naming) {
    if (naming.empty())
        return "No backup has the name.\n";
    std::string lines = countWords(static_cast<std::int64_t>(naming.size()), "backup") +
                        (naming.size() == 1 ? " still has the name:\n" : " still have the name:\n");
    for (const db::BackupNaming& each : naming)
        lines += isoLocalMinute(each.backup.at) + "  " + each.backup.path.string() + "\n                  " +
                 (each.lastDay ? "goes by itself after " + isoDate(*each.lastDay) : "does not go by itself") +
                 "\n";
    return lines;
}

std::string whatWasDone(const db::ToBeForgotten& customer, const Currency& currency) {
    std::string words = "Forgot the customer. " +
                        (customer.orders.empty()
                             ? std::string{"There was no order of theirs.\n"}
                             : "The garments, film and money of " + ordersOf(customer.orders) + " stay.\n");
    if (customer.owed > Money{})
        words += spokenAmount(customer.owed, currency) + " is still owed, and no longer known by whom.\n";
    if (!customer.invoices.empty())
        words += "Invoices stay as they were made, with the name and the address, because the law may oblige "
                 "you to "
                 "keep them: " +
                 listed(customer.invoices) + ".\n";
    return words + "Papers, exported tables and news that were made before still have the name.\n";
}

} // namespace

Result<std::string> forget(const Arguments& arguments, const Clock& clock) {
    if (arguments.isDemo)
        return plainError(said("The demo is made again each day: nobody is forgotten there."));
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    auto shop = db::Shop::open(*path, clock.now);
    if (!shop.ok())
        return shop.error();
    const std::string who = arguments.target.string();
    const auto called =
        (*shop)->read([&](db::Connection& connection) { return db::customersCalled(connection, who); });
    if (!called.ok())
        return called.error();
    if (called->size() != 1)
        return notOne(who, *called);
    const CustomerId id = called->front().customer.id;
    const auto customer =
        (*shop)->read([&](db::Connection& connection) { return db::toBeForgotten(connection, id); });
    if (!customer.ok())
        return customer.error();
    if (const auto done = db::forgetCustomer(**shop, id); !done.ok())
        return done.error();
    const auto backups = db::backupsOf(std::filesystem::absolute(*path), secondBackupFolder());
    return whatWasDone(*customer, db::loadSettings((*shop)->connection()).currency) +
           backupsInLines(db::backupsNaming(backups, customer->rows, clock.moment().local()));
}

} // namespace holdfast::app

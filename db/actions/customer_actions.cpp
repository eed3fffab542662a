// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/customer_actions.h"

#include "core/orders/order_draft.h"
#include "core/trade/limits.h"
#include "db/tables/joined_customers.h"

namespace holdfast::db {

namespace {

struct CustomerRow {
    CustomerId id;
    std::string name;
    std::string phone;
    std::string note;
};

Error noSuchCustomer() {
    return fieldError("customer", said("The shop has no such customer any more."));
}

Result<CustomerRow> customerRow(Connection& connection, CustomerId id) {
    Query row =
        connection.query("SELECT name, phone, note, id IN (SELECT customer_id FROM forgotten_customer) "
                         "FROM customer WHERE id = ?1",
                         id);
    if (!row.step())
        return noSuchCustomer();
    if (row.truth(3))
        return fieldError("other", said("A customer who was forgotten is joined with nobody."));
    return CustomerRow{id, row.text(0), row.text(1), row.text(2)};
}

void concernsOrdersOf(Writer& writer, CustomerId customer) {
    Query orders = writer.connection().query("SELECT id FROM shop_order WHERE customer_id = ?1", customer);
    while (orders.step())
        writer.concerns(orders.id<OrderId>(0));
}

Result<std::string> customerNote(const std::string& note) {
    return typedText(note, {.field = "customerNote",
                            .what = phrase("The note"),
                            .least = 0,
                            .most = kMostNoteCharacters,
                            .mayBreakLines = true});
}

// The name comes after a colon or "Customer is now", where forgetting looks for it.
Sentence whatChanged(const CustomerRow& before, const CustomerRow& after) {
    const bool isOtherNote = before.note != after.note;
    if (isOtherNote && before.name == after.name && before.phone == after.phone)
        return after.note.empty()
                   ? said("Note of a customer taken off: {customer}", {{"customer", after.name}})
                   : said("Note of a customer written: {customer}", {{"customer", after.name}});
    if (after.phone.empty())
        return isOtherNote ? said("Customer is now {customer}, with another note", {{"customer", after.name}})
                           : said("Customer is now {customer}", {{"customer", after.name}});
    return isOtherNote ? said("Customer is now {customer}, {phone}, with another note",
                              {{"customer", after.name}, {"phone", after.phone}})
                       : said("Customer is now {customer}, {phone}",
                              {{"customer", after.name}, {"phone", after.phone}});
}

// One below the other, where they say different things.
Result<std::string> bothNotes(const CustomerRow& kept, const CustomerRow& other) {
    if (kept.note.empty() || kept.note == other.note)
        return other.note;
    if (other.note.empty())
        return kept.note;
    auto both = customerNote(kept.note + "\n" + other.note);
    if (!both)
        return fieldError("other",
                          said("Both notes together are longer than {n} characters. Shorten one first.",
                               {{"n", kMostNoteCharacters}}));
    return both;
}

} // namespace

Result<Done> changeCustomer(Shop& shop, CustomerId customer, const std::string& name,
                            const std::string& phone, const std::optional<std::string>& note) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto newName =
            typedText(name, {.field = "customerName", .what = phrase("The customer’s name")});
        if (!newName.ok())
            return newName.error();
        const auto newPhone = typedText(
            phone, {.field = "customerPhone", .what = phrase("The phone number"), .least = 0, .most = 30});
        if (!newPhone.ok())
            return newPhone.error();
        Query row =
            writer.connection().query("SELECT name, phone, note FROM customer WHERE id = ?1", customer);
        if (!row.step())
            return noSuchCustomer();
        const CustomerRow before{customer, row.text(0), row.text(1), row.text(2)};
        row.reset();
        const auto newNote = customerNote(note.value_or(before.note));
        if (!newNote.ok())
            return newNote.error();
        const CustomerRow after{customer, *newName, *newPhone, *newNote};
        writer.connection().run("UPDATE customer SET name = ?2, phone = ?3, note = ?4 WHERE id = ?1",
                                customer, after.name, after.phone, after.note);
        writer.describe(whatChanged(before, after));
        writer.concerns(customer);
        concernsOrdersOf(writer, customer);
        return Done{};
    });
}

Result<Done> joinCustomers(Shop& shop, CustomerId customer, CustomerId other) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        const auto kept = customerRow(connection, keptCustomer(connection, customer));
        const auto gone = customerRow(connection, keptCustomer(connection, other));
        if (!kept.ok() || !gone.ok())
            return kept.ok() ? gone.error() : kept.error();
        if (kept->id == gone->id)
            return fieldError("other", said("This is the same customer. Choose another one."));
        const auto note = bothNotes(*kept, *gone);
        if (!note.ok())
            return note.error();
        concernsOrdersOf(writer, gone->id);
        connection.run("UPDATE shop_order SET customer_id = ?1 WHERE customer_id = ?2", kept->id, gone->id);
        connection.run("UPDATE customer SET phone = ?2, note = ?3, joined_to = NULL WHERE id = ?1", kept->id,
                       kept->phone.empty() ? gone->phone : kept->phone, *note);
        connection.run("UPDATE customer SET joined_to = ?2 WHERE id = ?1", gone->id, kept->id);
        writer.concerns(kept->id);
        writer.concerns(gone->id);
        writer.describe(said("Customers joined: {other} is {customer}",
                             {{"other", gone->name}, {"customer", kept->name}}));
        return Done{};
    });
}

} // namespace holdfast::db

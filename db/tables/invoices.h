// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Invoices and credit notes out of the shop file. All functions throw SqliteFailure; Shop::read is their
// door.

#include "core/facts/invoice.h"
#include "db/sqlite/changeset.h"
#include "db/sqlite/connection.h"
#include "db/tables/unread_facts.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

// Of an order, also of one that is gone: invoices and credit notes, oldest first. What cannot be read is left
// out.
std::vector<Invoice> invoicesOf(Connection& connection, OrderId order);
// Notes the rows of all of them that cannot be read.
void noteUnreadInvoices(Connection& connection, UnreadFacts& unread);

// The numbers of invoices and credit notes that bear the customer's name: of their orders.
std::vector<std::string> invoicesNaming(Connection& connection, CustomerId customer);

// The number of an invoice of an order that the changeset takes away; none where it takes none away.
std::optional<std::string> invoiceLeftAlone(Connection& connection, ChangesetView changeset);

} // namespace holdfast::db

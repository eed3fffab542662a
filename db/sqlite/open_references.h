// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Foreign keys looked at once for several statements, rather than after each. SQLite counts the references
// that lead nowhere as rows change, so that asking costs nothing however large the shop is.

namespace holdfast::db {

class Connection;

// From now until the transaction ends or a changeset is applied. REQUIRES: a transaction is open.
void deferReferences(Connection& connection);

// Whether a row written in this transaction refers to one that is not there.
bool hasOpenReferences(Connection& connection);

} // namespace holdfast::db

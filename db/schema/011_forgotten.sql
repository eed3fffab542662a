-- SPDX-License-Identifier: GPL-3.0-or-later
-- Customers who asked to be forgotten: the money stays, and no name. Rows are only ever added.

CREATE TABLE forgotten_customer (
    id          INTEGER PRIMARY KEY,
    customer_id INTEGER NOT NULL,       -- whose row an undo may have taken away
    at          INTEGER NOT NULL
) STRICT;
CREATE INDEX forgotten_customer_by_customer ON forgotten_customer(customer_id);

-- The orders that went with them.
CREATE TABLE forgotten_order (
    id           INTEGER PRIMARY KEY,
    order_id     INTEGER NOT NULL,
    forgotten_id INTEGER NOT NULL REFERENCES forgotten_customer(id)
) STRICT;
CREATE INDEX forgotten_order_by_order ON forgotten_order(order_id);

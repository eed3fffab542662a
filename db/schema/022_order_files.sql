-- SPDX-License-Identifier: GPL-3.0-or-later
-- Orders that are read from the file of a web shop: what the columns of such a file are, which garment each of its items is
-- like, and under which reference an order was taken.

-- One for each set of headings; the newest counts where two laptops named the same.
CREATE TABLE order_file (
    id       INTEGER PRIMARY KEY,
    shop     TEXT NOT NULL CHECK (shop <> ''),
    headings TEXT NOT NULL CHECK (headings <> '')
) STRICT;
CREATE TABLE order_file_column (
    id      INTEGER PRIMARY KEY,
    file_id INTEGER NOT NULL REFERENCES order_file(id),
    meaning TEXT NOT NULL,
    heading TEXT NOT NULL
) STRICT;
-- The garment is named by its id alone: the order that it is of may be undone, and the item is named again then.
CREATE TABLE order_file_item (
    id      INTEGER PRIMARY KEY,
    file_id INTEGER NOT NULL REFERENCES order_file(id),
    item    TEXT NOT NULL,
    like_id INTEGER NOT NULL
) STRICT;
CREATE INDEX order_file_item_by_file ON order_file_item(file_id);

CREATE TABLE order_reference (
    id        INTEGER PRIMARY KEY,
    order_id  INTEGER NOT NULL REFERENCES shop_order(id),
    shop      TEXT NOT NULL,
    reference TEXT NOT NULL
) STRICT;
CREATE INDEX order_reference_by_order ON order_reference(order_id);
CREATE INDEX order_reference_by_text ON order_reference(reference, shop);

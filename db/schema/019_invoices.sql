-- SPDX-License-Identifier: GPL-3.0-or-later
-- Invoices and the credit notes that correct them, as they were made; and until when a quotation is valid.

-- A day; NULL: of an order, or of a quotation from before this step.
ALTER TABLE shop_order ADD COLUMN valid_until TEXT;

-- Rows are only ever added, here and in invoice_row: no undo takes one away, no change writes to one. The order is
-- no reference, because another laptop may have undone it; its number is here as it was. One number without a gap in
-- each series, which is of one copy of the shop.
CREATE TABLE invoice (
    id                INTEGER PRIMARY KEY,
    order_id          INTEGER NOT NULL,
    order_number      INTEGER NOT NULL,
    kind              TEXT NOT NULL,             -- invoice, credit-note
    series            TEXT NOT NULL,
    number            INTEGER NOT NULL CHECK (number > 0),
    corrects_id       INTEGER REFERENCES invoice(id), -- of a credit note: the invoice
    reason            TEXT NOT NULL DEFAULT '',
    made_on           TEXT NOT NULL,
    handed_over_on    TEXT,
    shop_name         TEXT NOT NULL,
    shop_address      TEXT NOT NULL,
    tax_number        TEXT NOT NULL,
    shop_lines        TEXT NOT NULL,
    customer_name     TEXT NOT NULL,
    customer_address  TEXT NOT NULL,
    currency_code     TEXT NOT NULL,
    currency_sign     TEXT NOT NULL,
    currency_exponent INTEGER NOT NULL,
    tax_kind          TEXT NOT NULL,
    tax_rate          INTEGER NOT NULL,
    taxed_by          TEXT NOT NULL,
    tax_rounding      TEXT NOT NULL,
    tax_name          TEXT NOT NULL,
    tax_minor         INTEGER NOT NULL,
    total_minor       INTEGER NOT NULL,
    paid_minor        INTEGER NOT NULL,
    CHECK ((kind = 'credit-note') = (corrects_id IS NOT NULL))
) STRICT;
CREATE INDEX invoice_by_order ON invoice(order_id);
CREATE INDEX invoice_by_number ON invoice(series, number);
CREATE INDEX invoice_by_corrected ON invoice(corrects_id) WHERE corrects_id IS NOT NULL;

CREATE TABLE invoice_row (
    id         INTEGER PRIMARY KEY,
    invoice_id INTEGER NOT NULL REFERENCES invoice(id),
    credits_id INTEGER REFERENCES invoice_row(id), -- of a credit note: the row of the invoice
    words      TEXT NOT NULL,
    minor      INTEGER NOT NULL
) STRICT;
CREATE INDEX invoice_row_by_invoice ON invoice_row(invoice_id);
CREATE INDEX invoice_row_by_credited ON invoice_row(credits_id) WHERE credits_id IS NOT NULL;

-- SPDX-License-Identifier: GPL-3.0-or-later
-- A customer has a note, and two customers who are one can be joined.

ALTER TABLE customer ADD COLUMN note TEXT NOT NULL DEFAULT '';

-- The customer who this one is, once both were joined. The row stays: an order of theirs may still come in from another
-- laptop.
ALTER TABLE customer ADD COLUMN joined_to INTEGER REFERENCES customer(id);
CREATE INDEX customer_by_joined ON customer(joined_to) WHERE joined_to IS NOT NULL;

-- Who is who in the end, over any number of joins. Two who were joined to each other on two laptops, and whoever was
-- joined to somebody who is forgotten, are themselves.
CREATE VIEW customer_joined AS
    WITH RECURSIVE step (id, to_id) AS (
        SELECT id, joined_to FROM customer WHERE joined_to IS NOT NULL
        UNION
        SELECT step.id, customer.joined_to FROM step JOIN customer ON customer.id = step.to_id
        WHERE customer.joined_to IS NOT NULL
    )
    SELECT step.id AS id, step.to_id AS kept_id FROM step JOIN customer ON customer.id = step.to_id
    WHERE customer.joined_to IS NULL
      AND step.to_id NOT IN (SELECT customer_id FROM forgotten_customer);

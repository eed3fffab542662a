-- SPDX-License-Identifier: GPL-3.0-or-later
-- What an order comes to besides its garments, and the tax on it; and the price list of the shop.

-- An extra in words, a discount, what many at once or a short day change. Either an amount or a part of what the
-- garments cost, in hundredths of a percent; below 0 what is taken off.
CREATE TABLE bill_line (
    id       INTEGER PRIMARY KEY,
    order_id INTEGER NOT NULL REFERENCES shop_order(id),
    kind     TEXT NOT NULL,
    words    TEXT NOT NULL DEFAULT '',
    minor    INTEGER,
    share    INTEGER,
    CHECK ((minor IS NULL) <> (share IS NULL))
) STRICT;
CREATE INDEX bill_line_by_order ON bill_line(order_id);

-- As it was when the order was taken: the rate in hundredths of a percent.
ALTER TABLE shop_order ADD COLUMN tax_kind TEXT NOT NULL DEFAULT 'none';
ALTER TABLE shop_order ADD COLUMN tax_rate INTEGER NOT NULL DEFAULT 0;
ALTER TABLE shop_order ADD COLUMN taxed_by TEXT NOT NULL DEFAULT 'total';
ALTER TABLE shop_order ADD COLUMN tax_rounding TEXT NOT NULL DEFAULT 'half-up';

CREATE TABLE style_price (
    style_id INTEGER PRIMARY KEY REFERENCES blank_style(id),
    minor    INTEGER NOT NULL CHECK (minor >= 0)
) STRICT;
-- Of a decal whose longer side is no longer.
CREATE TABLE decal_price (
    up_to_mm INTEGER PRIMARY KEY CHECK (up_to_mm > 0),
    minor    INTEGER NOT NULL CHECK (minor >= 0)
) STRICT;

-- ── what an order comes to ────────────────────────────────────────────────────────────────────────────
-- As core/orders/order_sum.h has it. Integer division goes towards 0, and what is left over keeps the sign; so a
-- half is rounded away from 0, or to the even neighbour. Each part names its order, so that none is added up for all.

CREATE VIEW bill_line_amount AS
    SELECT id, order_id, COALESCE(minor, (
        SELECT garments * share / 10000
               + CASE WHEN abs(garments * share % 10000) * 2 < 10000 THEN 0
                      WHEN garments * share < 0 THEN -1 ELSE 1 END
        FROM (SELECT COALESCE(SUM(price_minor), 0) AS garments FROM garment
              WHERE garment.order_id = bill_line.order_id AND garment.cancelled_at IS NULL))) AS minor
    FROM bill_line;

CREATE VIEW bill AS
    SELECT shop_order.id AS order_id,
           (SELECT COALESCE(SUM(price_minor), 0) FROM garment
            WHERE garment.order_id = shop_order.id AND garment.cancelled_at IS NULL)
           + (SELECT COALESCE(SUM(minor), 0) FROM bill_line_amount
              WHERE bill_line_amount.order_id = shop_order.id) AS minor
    FROM shop_order;

CREATE VIEW added_tax AS
    SELECT shop_order.id AS order_id, (
        SELECT COALESCE(SUM(
            minor * tax_rate / 10000
            + CASE WHEN abs(minor * tax_rate % 10000) * 2 < 10000 THEN 0
                   WHEN abs(minor * tax_rate % 10000) * 2 = 10000 AND tax_rounding = 'half-even'
                        AND minor * tax_rate / 10000 % 2 = 0 THEN 0
                   WHEN minor * tax_rate < 0 THEN -1 ELSE 1 END), 0)
        FROM (SELECT price_minor AS minor FROM garment
              WHERE garment.order_id = shop_order.id AND garment.cancelled_at IS NULL AND taxed_by = 'line'
              UNION ALL
              SELECT minor FROM bill_line_amount
              WHERE bill_line_amount.order_id = shop_order.id AND taxed_by = 'line'
              UNION ALL
              SELECT minor FROM bill WHERE bill.order_id = shop_order.id AND taxed_by = 'total')) AS minor
    FROM shop_order WHERE tax_kind = 'added';

DROP VIEW order_card_source;
CREATE VIEW order_card_source AS
    SELECT shop_order.id AS id, shop_order.number AS number,
           COALESCE(customer.name, '') AS customer, COALESCE(customer.phone, '') AS phone,
           shop_order.taken_at_place || ' ' || shop_order.note || ' ' || COALESCE((
               SELECT group_concat(blank_style.name || ' ' || style_colour.name || ' ' || COALESCE((
                   SELECT group_concat(COALESCE(decal.artwork, decal.wording) || ' ' || film.shade, ' ')
                   FROM decal JOIN film ON film.id = decal.film_id WHERE decal.garment_id = garment.id), ''), ' ')
               FROM garment
               JOIN blank_style ON blank_style.id = garment.style_id
               JOIN style_colour ON style_colour.id = garment.colour_id
               WHERE garment.order_id = shop_order.id AND garment.cancelled_at IS NULL), '') AS words,
           shop_order.state AS state, shop_order.promised AS promised,
           (SELECT COUNT(*) FROM garment
            WHERE garment.order_id = shop_order.id AND garment.cancelled_at IS NULL) AS garments,
           (SELECT minor FROM bill WHERE bill.order_id = shop_order.id)
           + COALESCE((SELECT minor FROM added_tax WHERE added_tax.order_id = shop_order.id), 0) AS total_minor,
           (SELECT COALESCE(SUM(minor), 0) FROM money_move WHERE money_move.order_id = shop_order.id) AS paid_minor
    FROM shop_order LEFT JOIN customer ON customer.id = shop_order.customer_id;

CREATE TRIGGER bill_line_added AFTER INSERT ON bill_line BEGIN
    UPDATE order_card SET total_minor =
        (SELECT total_minor FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id = NEW.order_id;
END;
CREATE TRIGGER bill_line_removed AFTER DELETE ON bill_line BEGIN
    UPDATE order_card SET total_minor =
        (SELECT total_minor FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id = OLD.order_id;
END;
CREATE TRIGGER bill_line_changed AFTER UPDATE ON bill_line BEGIN
    UPDATE order_card SET total_minor =
        (SELECT total_minor FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id IN (OLD.order_id, NEW.order_id);
END;
CREATE TRIGGER shop_order_taxed
AFTER UPDATE OF tax_kind, tax_rate, taxed_by, tax_rounding ON shop_order BEGIN
    UPDATE order_card SET total_minor =
        (SELECT total_minor FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id = NEW.id;
END;

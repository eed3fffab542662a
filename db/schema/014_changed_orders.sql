-- SPDX-License-Identifier: GPL-3.0-or-later
-- An order lives on after it was taken: a garment of it can be cancelled alone, and garments and money can go over to
-- another order.

-- When it was cancelled; NULL: it is made. A cancelled garment keeps its letter, so that no ticket is wrong, and what
-- was cut for it stays in the ledger of its roll.
ALTER TABLE garment ADD COLUMN cancelled_at INTEGER;

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
           (SELECT COALESCE(SUM(price_minor), 0) FROM garment
            WHERE garment.order_id = shop_order.id AND garment.cancelled_at IS NULL) AS total_minor,
           (SELECT COALESCE(SUM(minor), 0) FROM money_move WHERE money_move.order_id = shop_order.id) AS paid_minor
    FROM shop_order LEFT JOIN customer ON customer.id = shop_order.customer_id;

DROP TRIGGER garment_changed;
CREATE TRIGGER garment_changed
AFTER UPDATE OF order_id, style_id, colour_id, price_minor, cancelled_at ON garment BEGIN
    UPDATE order_card SET (words, garments, total_minor) =
        (SELECT words, garments, total_minor FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id IN (OLD.order_id, NEW.order_id);
END;

CREATE TRIGGER money_move_changed AFTER UPDATE OF order_id, minor ON money_move BEGIN
    UPDATE order_card SET paid_minor =
        (SELECT paid_minor FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id IN (OLD.order_id, NEW.order_id);
END;

-- A cancelled garment keeps no blank.
DROP VIEW ledger_fault;
DROP VIEW reserved_fault;
CREATE VIEW reserved_fault AS
    SELECT lot_id, blank_style.name || ', ' || size || ': ' || kept || ' garments would keep one of ' || units ||
           '.' AS message
    FROM (SELECT blank_lot.id AS lot_id, blank_lot.style_id AS style_id, blank_lot.size AS size, COUNT(*) AS kept,
                 (SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_move.lot_id = blank_lot.id) AS units
          FROM shop_order
          CROSS JOIN garment ON garment.order_id = shop_order.id
          JOIN blank_lot ON blank_lot.id = garment.lot_id
          WHERE shop_order.state IN ('quoted', 'confirmed') AND garment.handed_over_at IS NULL
            AND garment.cancelled_at IS NULL
            AND NOT EXISTS (SELECT 1 FROM press_step WHERE press_step.garment_id = garment.id
                            AND press_step.attempt = garment.attempt)
          GROUP BY blank_lot.id)
    JOIN blank_style ON blank_style.id = style_id
    WHERE kept > units;
CREATE VIEW ledger_fault AS
    SELECT message FROM lot_fault UNION ALL SELECT message FROM roll_fault
    UNION ALL SELECT message FROM order_fault UNION ALL SELECT message FROM reserved_fault;

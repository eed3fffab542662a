-- SPDX-License-Identifier: GPL-3.0-or-later
-- What figures ask of the steps of each garment, of which there are a dozen: kept by triggers, as the cards of orders
-- are, so it is right after every action and every undo. Not recorded.

-- Of its present attempt; a garment with no step of that has no card.
CREATE TABLE garment_card (
    id         INTEGER PRIMARY KEY,     -- the garment's
    pressed_at INTEGER,                 -- when the last step ended; NULL: a step is not done yet
    presses    TEXT NOT NULL            -- ids of the presses used, with a space between; the last used is the last
) STRICT;

CREATE VIEW garment_card_source AS
    SELECT garment.id AS id,
           (SELECT CASE WHEN SUM(finished_at IS NULL) = 0 THEN MAX(finished_at) END FROM press_step
            WHERE garment_id = garment.id AND press_step.attempt = garment.attempt) AS pressed_at,
           COALESCE((SELECT group_concat(press_id, ' ') FROM (
               SELECT press_id FROM press_step
               WHERE garment_id = garment.id AND press_step.attempt = garment.attempt AND press_id IS NOT NULL
               GROUP BY press_id ORDER BY MAX(press_step.id))), '') AS presses
    FROM garment
    WHERE EXISTS (SELECT 1 FROM press_step WHERE garment_id = garment.id AND press_step.attempt = garment.attempt);

CREATE TRIGGER garment_card_begun AFTER INSERT ON garment BEGIN
    DELETE FROM garment_card WHERE id = NEW.id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = NEW.id;
END;
CREATE TRIGGER garment_card_of_attempt AFTER UPDATE OF attempt ON garment BEGIN
    DELETE FROM garment_card WHERE id = NEW.id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = NEW.id;
END;
CREATE TRIGGER garment_card_gone AFTER DELETE ON garment BEGIN
    DELETE FROM garment_card WHERE id = OLD.id;
END;
CREATE TRIGGER press_step_added AFTER INSERT ON press_step BEGIN
    DELETE FROM garment_card WHERE id = NEW.garment_id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = NEW.garment_id;
END;
CREATE TRIGGER press_step_changed AFTER UPDATE ON press_step BEGIN
    DELETE FROM garment_card WHERE id IN (OLD.garment_id, NEW.garment_id);
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id IN (OLD.garment_id, NEW.garment_id);
END;
CREATE TRIGGER press_step_removed AFTER DELETE ON press_step BEGIN
    DELETE FROM garment_card WHERE id = OLD.garment_id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = OLD.garment_id;
END;

INSERT INTO garment_card SELECT * FROM garment_card_source;

-- ── which ledger is at fault ──────────────────────────────────────────────────────────────────────────
-- With the id of the lot, roll or order, so that an undo looks only at those that it moves.

DROP VIEW ledger_fault;
CREATE VIEW lot_fault AS
    SELECT lot_id, 'A lot of blanks would have ' || units || ' units left.' AS message
    FROM lot_units WHERE units < 0;
CREATE VIEW roll_fault AS
    SELECT roll_id, 'Roll R-' || printf('%02d', film_roll.number) || ' would have ' || mm || ' mm left.' AS message
    FROM roll_length JOIN film_roll ON film_roll.id = roll_id WHERE mm < 0;
CREATE VIEW order_fault AS
    SELECT shop_order.id AS order_id,
           'Order ' || shop_order.number || ' would have been paid less than nothing.' AS message
    FROM shop_order JOIN money_move ON money_move.order_id = shop_order.id
    GROUP BY shop_order.id HAVING SUM(minor) < 0;
CREATE VIEW reserved_fault AS
    SELECT lot_id, blank_style.name || ', ' || size || ': ' || kept || ' garments would keep one of ' || units ||
           '.' AS message
    FROM (SELECT blank_lot.id AS lot_id, blank_lot.style_id AS style_id, blank_lot.size AS size, COUNT(*) AS kept,
                 (SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_move.lot_id = blank_lot.id) AS units
          FROM shop_order
          CROSS JOIN garment ON garment.order_id = shop_order.id
          JOIN blank_lot ON blank_lot.id = garment.lot_id
          WHERE shop_order.state IN ('quoted', 'confirmed') AND garment.handed_over_at IS NULL
            AND NOT EXISTS (SELECT 1 FROM press_step WHERE press_step.garment_id = garment.id
                            AND press_step.attempt = garment.attempt)
          GROUP BY blank_lot.id)
    JOIN blank_style ON blank_style.id = style_id
    WHERE kept > units;
CREATE VIEW ledger_fault AS
    SELECT message FROM lot_fault UNION ALL SELECT message FROM roll_fault
    UNION ALL SELECT message FROM order_fault UNION ALL SELECT message FROM reserved_fault;

-- SPDX-License-Identifier: GPL-3.0-or-later
-- The second laptop. Nothing here is recorded by a session; what is exchanged is said in db/exchange.

-- Which shop this is, by chance, from when the first copy for another laptop was made: every copy bears the same number.
CREATE TABLE journal_shop (
    id   INTEGER PRIMARY KEY CHECK (id = 1),
    shop INTEGER NOT NULL
) STRICT;

-- The line: in which order the workshop took in everybody's entries. An entry is in journal_entry or, where it could
-- not be applied, in journal_aside. Two copies hold the same line up to a place where their marks there are the same.
CREATE TABLE journal_line (
    place    INTEGER PRIMARY KEY CHECK (place > 0),
    entry_id INTEGER NOT NULL UNIQUE,
    mark     INTEGER NOT NULL
) STRICT;

-- Entries that could not be applied, whole.
CREATE TABLE journal_aside (
    id        INTEGER PRIMARY KEY,
    seat_id   INTEGER NOT NULL REFERENCES seat (id),
    at        INTEGER NOT NULL,
    title     TEXT NOT NULL,
    undoes    INTEGER,                  -- an entry that may be aside itself
    why       TEXT NOT NULL,
    changeset BLOB NOT NULL
) STRICT;

CREATE TABLE journal_aside_subject (
    entry_id   INTEGER NOT NULL REFERENCES journal_aside (id),
    kind       TEXT NOT NULL,
    subject_id INTEGER NOT NULL,
    PRIMARY KEY (entry_id, kind, subject_id)
) STRICT, WITHOUT ROWID;

-- What gave way when an entry was taken in, in words.
CREATE TABLE journal_remark (
    entry_id INTEGER PRIMARY KEY REFERENCES journal_entry (id),
    words    TEXT NOT NULL
) STRICT;

-- How far along the line another laptop is known to be, and since when: at the workshop a row a laptop, elsewhere one
-- of the workshop.
CREATE TABLE seat_known (
    seat_id INTEGER PRIMARY KEY REFERENCES seat (id),
    place   INTEGER NOT NULL,
    at      INTEGER NOT NULL
) STRICT;

-- Entries set aside that a person here has done with.
CREATE TABLE seat_let_go (
    entry_id INTEGER PRIMARY KEY
) STRICT;

-- As before, but the garments that keep a unit are counted before their lots are looked at: in a shop of 20,000 orders
-- that is the difference between two seconds and some milliseconds, for every taking back and every entry taken in.
DROP VIEW ledger_fault;
CREATE VIEW ledger_fault AS
    SELECT 'A lot of blanks would have ' || units || ' units left.' AS message FROM lot_units WHERE units < 0
    UNION ALL
    SELECT 'Roll R-' || printf('%02d', film_roll.number) || ' would have ' || mm || ' mm left.'
    FROM roll_length JOIN film_roll ON film_roll.id = roll_id WHERE mm < 0
    UNION ALL
    SELECT 'Order ' || shop_order.number || ' would have been paid less than nothing.'
    FROM shop_order JOIN money_move ON money_move.order_id = shop_order.id
    GROUP BY shop_order.id HAVING SUM(minor) < 0
    UNION ALL
    SELECT blank_style.name || ', ' || blank_lot.size || ': ' || kept.garments || ' garments would keep one of ' ||
           (SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_move.lot_id = kept.lot_id) || '.'
    FROM (SELECT garment.lot_id AS lot_id, COUNT(*) AS garments
          FROM shop_order
          CROSS JOIN garment ON garment.order_id = shop_order.id
          WHERE shop_order.state IN ('quoted', 'confirmed') AND garment.handed_over_at IS NULL
            AND garment.lot_id IS NOT NULL
            AND NOT EXISTS (SELECT 1 FROM press_step WHERE press_step.garment_id = garment.id
                            AND press_step.attempt = garment.attempt)
          GROUP BY garment.lot_id) AS kept
    CROSS JOIN blank_lot ON blank_lot.id = kept.lot_id
    CROSS JOIN blank_style ON blank_style.id = blank_lot.style_id
    WHERE kept.garments > (SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_move.lot_id = kept.lot_id);

-- No two rolls bear one number, though the last be taken back, its number given again, and then done again after all.
WITH later AS (
    SELECT id, ROW_NUMBER() OVER (ORDER BY id) AS place FROM film_roll AS one
    WHERE EXISTS (SELECT 1 FROM film_roll AS other WHERE other.number = one.number AND other.id < one.id))
UPDATE film_roll SET number = (SELECT MAX(number) FROM film_roll) + later.place FROM later WHERE later.id = film_roll.id;
CREATE UNIQUE INDEX film_roll_by_number ON film_roll(number);

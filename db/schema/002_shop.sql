-- SPDX-License-Identifier: GPL-3.0-or-later
-- The tables of the trade. Instants are whole UTC seconds, days ISO dates, local times ISO minutes,
-- lengths millimetres, weights grams, money minor units. Quantities are ledgers: sums of moves.
-- Columns are only ever appended: the journal matches them by position.

CREATE TABLE setting (
    name  TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT;

CREATE TABLE closed_day (
    day TEXT PRIMARY KEY NOT NULL
) STRICT;

-- ── blanks ────────────────────────────────────────────────────────────────────────────────────────────

CREATE TABLE blank_style (
    id                   INTEGER PRIMARY KEY,
    name                 TEXT NOT NULL,
    outline              TEXT NOT NULL,
    weight_g             INTEGER NOT NULL CHECK (weight_g > 0),
    cost_minor           INTEGER NOT NULL CHECK (cost_minor >= 0),
    not_prewashed_because TEXT NOT NULL DEFAULT '',
    for_child            INTEGER NOT NULL DEFAULT 0,
    sleepwear            INTEGER NOT NULL DEFAULT 0,
    has_cords            INTEGER NOT NULL DEFAULT 0,
    law_checked_by       TEXT NOT NULL DEFAULT '',
    label_read_on        TEXT,              -- NULL: the label has not been read; what follows then has no meaning
    stretch              TEXT NOT NULL DEFAULT 'none',
    coating              TEXT NOT NULL DEFAULT 'none',
    highest_safe_c       REAL,
    care_wash_c          INTEGER NOT NULL DEFAULT 0,
    care_agitation       TEXT NOT NULL DEFAULT 'by-hand',
    care_tumble          TEXT NOT NULL DEFAULT 'no',
    care_iron_c          INTEGER NOT NULL DEFAULT 0,
    care_bleach          TEXT NOT NULL DEFAULT 'no',
    care_cleaning        INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE style_size (
    style_id INTEGER NOT NULL REFERENCES blank_style(id),
    position INTEGER NOT NULL,
    size     TEXT NOT NULL,
    PRIMARY KEY (style_id, position)
) STRICT;

CREATE TABLE style_colour (
    id       INTEGER PRIMARY KEY,
    style_id INTEGER NOT NULL REFERENCES blank_style(id),
    position INTEGER NOT NULL,
    name     TEXT NOT NULL,
    rgb      INTEGER NOT NULL
) STRICT;
CREATE INDEX style_colour_by_style ON style_colour(style_id);

CREATE TABLE style_fibre (
    style_id INTEGER NOT NULL REFERENCES blank_style(id),
    fibre    TEXT NOT NULL,
    percent  INTEGER NOT NULL CHECK (percent BETWEEN 1 AND 100),
    PRIMARY KEY (style_id, fibre)
) STRICT;

CREATE TABLE style_obstacle (
    style_id INTEGER NOT NULL REFERENCES blank_style(id),
    obstacle TEXT NOT NULL,
    way      TEXT,
    PRIMARY KEY (style_id, obstacle)
) STRICT;

CREATE TABLE wash_load (
    id          INTEGER PRIMARY KEY,
    started_at  INTEGER NOT NULL,
    detergent   TEXT NOT NULL,
    softener    INTEGER NOT NULL,
    water_c     REAL NOT NULL,
    drying      TEXT NOT NULL,
    dryer_sheet INTEGER NOT NULL,
    dry_at      INTEGER
) STRICT;

CREATE TABLE blank_lot (
    id                INTEGER PRIMARY KEY,
    style_id          INTEGER NOT NULL REFERENCES blank_style(id),
    size              TEXT NOT NULL,
    colour_id         INTEGER NOT NULL REFERENCES style_colour(id),
    received_on       TEXT NOT NULL,
    parent_id         INTEGER REFERENCES blank_lot(id),
    last_load_id      INTEGER REFERENCES wash_load(id),
    length_before_mm  INTEGER,
    length_after_mm   INTEGER,
    width_before_mm   INTEGER,
    width_after_mm    INTEGER
) STRICT;
CREATE INDEX blank_lot_by_style ON blank_lot(style_id, size, colour_id);
CREATE INDEX blank_lot_by_load ON blank_lot(last_load_id) WHERE last_load_id IS NOT NULL;

CREATE TABLE lot_move (
    id         INTEGER PRIMARY KEY,
    lot_id     INTEGER NOT NULL REFERENCES blank_lot(id),
    at         INTEGER NOT NULL,
    units      INTEGER NOT NULL CHECK (units <> 0),
    reason     TEXT NOT NULL,
    garment_id INTEGER REFERENCES garment(id)
) STRICT;
CREATE INDEX lot_move_by_lot ON lot_move(lot_id, units);
CREATE INDEX lot_move_by_garment ON lot_move(garment_id) WHERE garment_id IS NOT NULL;

-- ── film ──────────────────────────────────────────────────────────────────────────────────────────────

CREATE TABLE film (
    id                  INTEGER PRIMARY KEY,
    finish              TEXT NOT NULL,
    shade               TEXT NOT NULL,
    rgb                 INTEGER NOT NULL,
    recipe_c            REAL,                -- NULL: no recipe; what follows then has no meaning
    dwell_s             INTEGER NOT NULL DEFAULT 0,
    pressure            TEXT NOT NULL DEFAULT 'medium',
    peel                TEXT NOT NULL DEFAULT 'warm',
    preheat_s           INTEGER NOT NULL DEFAULT 15,
    cool_s              INTEGER NOT NULL DEFAULT 0,
    finish_front_s      INTEGER NOT NULL DEFAULT 5,
    finish_back_s       INTEGER NOT NULL DEFAULT 5,
    tack_s              INTEGER NOT NULL DEFAULT 5,
    recipe_confirmed_by TEXT NOT NULL DEFAULT '',
    follows             TEXT NOT NULL DEFAULT 'some',
    grips_coated        INTEGER NOT NULL DEFAULT 0,
    care_wash_c         INTEGER NOT NULL DEFAULT 40,
    care_agitation      TEXT NOT NULL DEFAULT 'normal',
    care_tumble         TEXT NOT NULL DEFAULT 'low',
    care_iron_c         INTEGER NOT NULL DEFAULT 0,
    care_bleach         TEXT NOT NULL DEFAULT 'no',
    care_cleaning       INTEGER NOT NULL DEFAULT 0,
    shelf_life_days     INTEGER,
    humidity_low        REAL NOT NULL DEFAULT 30,
    humidity_high       REAL NOT NULL DEFAULT 50,
    store_low_c         REAL NOT NULL DEFAULT 10,
    store_high_c        REAL NOT NULL DEFAULT 30,
    allowed_outside_h   INTEGER NOT NULL DEFAULT 72,
    q10                 REAL NOT NULL DEFAULT 2,
    reference_c         REAL NOT NULL DEFAULT 22,
    strip_extends_days  INTEGER NOT NULL DEFAULT 30,
    may_lie_under       INTEGER NOT NULL DEFAULT 1,
    may_lie_over        INTEGER NOT NULL DEFAULT 1,
    has_grain           INTEGER NOT NULL DEFAULT 0,
    roll_width_mm       INTEGER NOT NULL DEFAULT 500,
    cost_per_metre      INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE film_not_for (
    film_id INTEGER NOT NULL REFERENCES film(id),
    fibre   TEXT NOT NULL,
    PRIMARY KEY (film_id, fibre)
) STRICT;

CREATE TABLE storage_place (
    id   INTEGER PRIMARY KEY,
    name TEXT NOT NULL
) STRICT;

CREATE TABLE climate_reading (
    place_id INTEGER NOT NULL REFERENCES storage_place(id),
    at       INTEGER NOT NULL,
    celsius  REAL NOT NULL,
    humidity REAL NOT NULL CHECK (humidity BETWEEN 0 AND 100),
    PRIMARY KEY (place_id, at)
) STRICT, WITHOUT ROWID;

CREATE TABLE film_roll (
    id             INTEGER PRIMARY KEY,
    number         INTEGER NOT NULL,
    film_id        INTEGER NOT NULL REFERENCES film(id),
    width_mm       INTEGER NOT NULL CHECK (width_mm > 0),
    received_on    TEXT NOT NULL,
    made_on        TEXT,
    printed_use_by TEXT,
    state          TEXT NOT NULL DEFAULT 'on-shelf'
) STRICT;

CREATE TABLE roll_stay (
    id       INTEGER PRIMARY KEY,
    roll_id  INTEGER NOT NULL REFERENCES film_roll(id),
    place_id INTEGER NOT NULL REFERENCES storage_place(id),
    since    INTEGER NOT NULL
) STRICT;
CREATE INDEX roll_stay_by_roll ON roll_stay(roll_id, since);

CREATE TABLE test_strip (
    id           INTEGER PRIMARY KEY,
    roll_id      INTEGER NOT NULL REFERENCES film_roll(id),
    at           INTEGER NOT NULL,
    passed       INTEGER NOT NULL,
    extends_days INTEGER NOT NULL,
    note         TEXT NOT NULL
) STRICT;
CREATE INDEX test_strip_by_roll ON test_strip(roll_id, at);

CREATE TABLE roll_move (
    id       INTEGER PRIMARY KEY,
    roll_id  INTEGER NOT NULL REFERENCES film_roll(id),
    at       INTEGER NOT NULL,
    mm       INTEGER NOT NULL CHECK (mm <> 0),
    reason   TEXT NOT NULL,              -- in words, for people
    kind     TEXT NOT NULL CHECK (kind IN ('received', 'cut', 'test-strip', 'correction', 'used-up'))
) STRICT;
CREATE INDEX roll_move_by_roll ON roll_move(roll_id, mm);
CREATE INDEX roll_move_by_time ON roll_move(at);

-- ── presses ───────────────────────────────────────────────────────────────────────────────────────────

CREATE TABLE press (
    id              INTEGER PRIMARY KEY,
    name            TEXT NOT NULL,
    platen_width_mm INTEGER NOT NULL CHECK (platen_width_mm > 0),
    platen_height_mm INTEGER NOT NULL CHECK (platen_height_mm > 0),
    has_small_platen INTEGER NOT NULL DEFAULT 0,
    heats_per_minute REAL NOT NULL,
    cools_per_minute REAL NOT NULL,
    tolerance_c     REAL NOT NULL,
    even_within_c   REAL NOT NULL,
    check_every_days INTEGER NOT NULL
) STRICT;

CREATE TABLE press_check (
    id       INTEGER PRIMARY KEY,
    press_id INTEGER NOT NULL REFERENCES press(id),
    at       INTEGER NOT NULL,
    set_c    REAL NOT NULL,
    by_whom  TEXT NOT NULL
) STRICT;
CREATE INDEX press_check_by_press ON press_check(press_id, at);

CREATE TABLE press_check_reading (
    check_id INTEGER NOT NULL REFERENCES press_check(id),
    spot     INTEGER NOT NULL,
    celsius  REAL NOT NULL,
    PRIMARY KEY (check_id, spot)
) STRICT;

-- ── orders ────────────────────────────────────────────────────────────────────────────────────────────

CREATE TABLE customer (
    id    INTEGER PRIMARY KEY,
    name  TEXT NOT NULL CHECK (name <> ''),
    phone TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX customer_by_name ON customer(name COLLATE NOCASE);
CREATE INDEX customer_by_phone ON customer(phone) WHERE phone <> '';

CREATE TABLE shop_order (
    id             INTEGER PRIMARY KEY,
    number         INTEGER NOT NULL UNIQUE,
    customer_id    INTEGER NOT NULL REFERENCES customer(id),
    state          TEXT NOT NULL,
    taken_at       INTEGER NOT NULL,
    taken_at_place TEXT NOT NULL,
    promised       TEXT NOT NULL,       -- local, "2026-11-26T15:00"
    handed_over_at INTEGER,
    note           TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX shop_order_by_time ON shop_order(taken_at);
CREATE INDEX shop_order_by_customer ON shop_order(customer_id);
CREATE INDEX shop_order_open ON shop_order(id) WHERE state IN ('quoted', 'confirmed');

CREATE TABLE garment (
    id             INTEGER PRIMARY KEY,
    order_id       INTEGER NOT NULL REFERENCES shop_order(id),
    position       INTEGER NOT NULL,
    style_id       INTEGER NOT NULL REFERENCES blank_style(id),
    size           TEXT NOT NULL,
    colour_id      INTEGER NOT NULL REFERENCES style_colour(id),
    lot_id         INTEGER REFERENCES blank_lot(id),
    price_minor    INTEGER NOT NULL CHECK (price_minor >= 0),
    attempt        INTEGER NOT NULL DEFAULT 1,
    handed_over_at INTEGER
) STRICT;
CREATE INDEX garment_by_order ON garment(order_id);
CREATE INDEX garment_by_lot ON garment(lot_id) WHERE lot_id IS NOT NULL;

CREATE TABLE decal (
    id           INTEGER PRIMARY KEY,
    garment_id   INTEGER NOT NULL REFERENCES garment(id),
    film_id      INTEGER NOT NULL REFERENCES film(id),
    artwork      TEXT,                  -- either artwork or wording
    wording      TEXT,
    face         TEXT,
    placement    TEXT NOT NULL,
    below_mm     INTEGER NOT NULL,
    aside_mm     INTEGER NOT NULL,
    width_mm     INTEGER NOT NULL CHECK (width_mm > 0),
    height_mm    INTEGER NOT NULL CHECK (height_mm > 0),
    layer        INTEGER NOT NULL CHECK (layer > 0),
    confirmed_by TEXT NOT NULL DEFAULT '',
    cut_roll_id  INTEGER REFERENCES film_roll(id),
    cut_at       INTEGER,
    CHECK ((artwork IS NULL) <> (wording IS NULL)),
    CHECK ((cut_roll_id IS NULL) = (cut_at IS NULL))
) STRICT;
CREATE INDEX decal_by_garment ON decal(garment_id);
CREATE INDEX decal_by_roll ON decal(cut_roll_id) WHERE cut_roll_id IS NOT NULL;

CREATE TABLE press_step (
    id          INTEGER PRIMARY KEY,
    garment_id  INTEGER NOT NULL REFERENCES garment(id),
    attempt     INTEGER NOT NULL,
    step_key    TEXT NOT NULL,
    press_id    INTEGER REFERENCES press(id),
    started_at  INTEGER NOT NULL,
    finished_at INTEGER
) STRICT;
CREATE INDEX press_step_by_garment ON press_step(garment_id, attempt);

CREATE TABLE waiver (
    id         INTEGER PRIMARY KEY,
    garment_id INTEGER NOT NULL REFERENCES garment(id),
    attempt    INTEGER NOT NULL,
    rule       TEXT NOT NULL,
    reason     TEXT NOT NULL CHECK (reason <> ''),
    at         INTEGER NOT NULL
) STRICT;
CREATE INDEX waiver_by_garment ON waiver(garment_id);

CREATE TABLE spoil (
    id         INTEGER PRIMARY KEY,
    garment_id INTEGER NOT NULL REFERENCES garment(id),
    attempt    INTEGER NOT NULL,
    at         INTEGER NOT NULL,
    cause      TEXT NOT NULL
) STRICT;
CREATE INDEX spoil_by_garment ON spoil(garment_id);

CREATE TABLE money_move (
    id       INTEGER PRIMARY KEY,
    order_id INTEGER NOT NULL REFERENCES shop_order(id),
    at       INTEGER NOT NULL,
    minor    INTEGER NOT NULL CHECK (minor <> 0),
    kind     TEXT NOT NULL,             -- deposit, payment, refund
    how      TEXT NOT NULL              -- cash, card, transfer
) STRICT;
CREATE INDEX money_move_by_time ON money_move(at, minor);
CREATE INDEX money_move_by_order ON money_move(order_id, minor);

-- ── sums and faults ───────────────────────────────────────────────────────────────────────────────────

CREATE VIEW lot_units AS
    SELECT blank_lot.id AS lot_id, COALESCE(SUM(lot_move.units), 0) AS units
    FROM blank_lot LEFT JOIN lot_move ON lot_move.lot_id = blank_lot.id
    GROUP BY blank_lot.id;

CREATE VIEW roll_length AS
    SELECT film_roll.id AS roll_id, COALESCE(SUM(roll_move.mm), 0) AS mm
    FROM film_roll LEFT JOIN roll_move ON roll_move.roll_id = film_roll.id
    GROUP BY film_roll.id;

-- A row for each ledger below zero, and for each lot of which more garments keep a unit than it has: no action
-- may leave one.
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
    SELECT blank_style.name || ', ' || blank_lot.size || ': ' || COUNT(*) || ' garments would keep one of ' ||
           lot_units.units || '.'
    FROM shop_order
    CROSS JOIN garment ON garment.order_id = shop_order.id
    JOIN blank_lot ON blank_lot.id = garment.lot_id
    JOIN blank_style ON blank_style.id = blank_lot.style_id
    JOIN lot_units ON lot_units.lot_id = blank_lot.id
    WHERE shop_order.state IN ('quoted', 'confirmed') AND garment.handed_over_at IS NULL
      AND NOT EXISTS (SELECT 1 FROM press_step WHERE press_step.garment_id = garment.id
                      AND press_step.attempt = garment.attempt)
    GROUP BY blank_lot.id HAVING COUNT(*) > lot_units.units;

-- ── the order book's card of each order, for lists and search ─────────────────────────────────────────
-- Kept by triggers from the tables above, so it is right after every action and every undo. Not recorded.

CREATE TABLE order_card (
    id          INTEGER PRIMARY KEY,    -- the order's
    number      INTEGER NOT NULL,
    customer    TEXT NOT NULL,
    phone       TEXT NOT NULL,
    words       TEXT NOT NULL,          -- styles, colours, artwork, wording, film shades, where it was taken
    state       TEXT NOT NULL,
    promised    TEXT NOT NULL,
    garments    INTEGER NOT NULL,
    total_minor INTEGER NOT NULL,
    paid_minor  INTEGER NOT NULL
) STRICT;
CREATE INDEX order_card_by_number ON order_card(number);
CREATE INDEX order_card_owing ON order_card(id) WHERE total_minor > paid_minor AND state <> 'cancelled';
CREATE INDEX order_card_open ON order_card(id) WHERE state IN ('quoted', 'confirmed');

-- While an action is taken back its customer may already be gone when the order still stands.
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
               WHERE garment.order_id = shop_order.id), '') AS words,
           shop_order.state AS state, shop_order.promised AS promised,
           (SELECT COUNT(*) FROM garment WHERE garment.order_id = shop_order.id) AS garments,
           (SELECT COALESCE(SUM(price_minor), 0) FROM garment WHERE garment.order_id = shop_order.id) AS total_minor,
           (SELECT COALESCE(SUM(minor), 0) FROM money_move WHERE money_move.order_id = shop_order.id) AS paid_minor
    FROM shop_order LEFT JOIN customer ON customer.id = shop_order.customer_id;

CREATE VIRTUAL TABLE order_text USING fts5(
    number, customer, phone, words,
    content = 'order_card', content_rowid = 'id', prefix = '1 2 3', tokenize = 'unicode61 remove_diacritics 2');

CREATE TRIGGER order_card_added AFTER INSERT ON order_card BEGIN
    INSERT INTO order_text (rowid, number, customer, phone, words)
    VALUES (NEW.id, NEW.number, NEW.customer, NEW.phone, NEW.words);
END;
CREATE TRIGGER order_card_removed AFTER DELETE ON order_card BEGIN
    INSERT INTO order_text (order_text, rowid, number, customer, phone, words)
    VALUES ('delete', OLD.id, OLD.number, OLD.customer, OLD.phone, OLD.words);
END;
CREATE TRIGGER order_card_reworded AFTER UPDATE OF number, customer, phone, words ON order_card
WHEN OLD.number <> NEW.number OR OLD.customer <> NEW.customer OR OLD.phone <> NEW.phone OR OLD.words <> NEW.words
BEGIN
    INSERT INTO order_text (order_text, rowid, number, customer, phone, words)
    VALUES ('delete', OLD.id, OLD.number, OLD.customer, OLD.phone, OLD.words);
    INSERT INTO order_text (rowid, number, customer, phone, words)
    VALUES (NEW.id, NEW.number, NEW.customer, NEW.phone, NEW.words);
END;

CREATE TRIGGER shop_order_added AFTER INSERT ON shop_order BEGIN
    INSERT INTO order_card SELECT * FROM order_card_source WHERE id = NEW.id;
END;
CREATE TRIGGER shop_order_removed AFTER DELETE ON shop_order BEGIN
    DELETE FROM order_card WHERE id = OLD.id;
END;
CREATE TRIGGER shop_order_changed AFTER UPDATE ON shop_order BEGIN
    UPDATE order_card SET state = NEW.state, promised = NEW.promised, number = NEW.number,
        (customer, phone, words) = (SELECT customer, phone, words FROM order_card_source WHERE id = NEW.id)
    WHERE id = NEW.id;
END;
CREATE TRIGGER customer_changed AFTER UPDATE OF name, phone ON customer BEGIN
    UPDATE order_card SET customer = NEW.name, phone = NEW.phone
    WHERE id IN (SELECT id FROM shop_order WHERE customer_id = NEW.id);
END;
CREATE TRIGGER garment_added AFTER INSERT ON garment BEGIN
    UPDATE order_card SET (words, garments, total_minor) =
        (SELECT words, garments, total_minor FROM order_card_source WHERE id = NEW.order_id) WHERE id = NEW.order_id;
END;
CREATE TRIGGER garment_removed AFTER DELETE ON garment BEGIN
    UPDATE order_card SET (words, garments, total_minor) =
        (SELECT words, garments, total_minor FROM order_card_source WHERE id = OLD.order_id) WHERE id = OLD.order_id;
END;
CREATE TRIGGER garment_changed AFTER UPDATE OF style_id, colour_id, price_minor ON garment BEGIN
    UPDATE order_card SET (words, garments, total_minor) =
        (SELECT words, garments, total_minor FROM order_card_source WHERE id = NEW.order_id) WHERE id = NEW.order_id;
END;
CREATE TRIGGER decal_added AFTER INSERT ON decal BEGIN
    UPDATE order_card SET words = (SELECT words FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id = (SELECT order_id FROM garment WHERE garment.id = NEW.garment_id);
END;
CREATE TRIGGER decal_removed AFTER DELETE ON decal BEGIN
    UPDATE order_card SET words = (SELECT words FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id = (SELECT order_id FROM garment WHERE garment.id = OLD.garment_id);
END;
CREATE TRIGGER decal_changed AFTER UPDATE OF film_id, artwork, wording ON decal BEGIN
    UPDATE order_card SET words = (SELECT words FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id = (SELECT order_id FROM garment WHERE garment.id = NEW.garment_id);
END;
CREATE TRIGGER money_move_added AFTER INSERT ON money_move BEGIN
    UPDATE order_card SET paid_minor = paid_minor + NEW.minor WHERE id = NEW.order_id;
END;
CREATE TRIGGER money_move_removed AFTER DELETE ON money_move BEGIN
    UPDATE order_card SET paid_minor = paid_minor - OLD.minor WHERE id = OLD.order_id;
END;

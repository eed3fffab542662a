-- SPDX-License-Identifier: GPL-3.0-or-later
-- A logger of temperature alone leaves the humidity unknown, which is not the same as dry. SQLite cannot take NOT NULL
-- off a column, so the table is built again, its columns in their order.
CREATE TABLE climate_reading_now (
    place_id INTEGER NOT NULL REFERENCES storage_place(id),
    at       INTEGER NOT NULL,
    celsius  REAL NOT NULL,
    humidity REAL CHECK (humidity BETWEEN 0 AND 100),
    PRIMARY KEY (place_id, at)
) STRICT, WITHOUT ROWID;
INSERT INTO climate_reading_now (place_id, at, celsius, humidity)
    SELECT place_id, at, celsius, humidity FROM climate_reading ORDER BY place_id, at;
DROP TABLE climate_reading;
ALTER TABLE climate_reading_now RENAME TO climate_reading;

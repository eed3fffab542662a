-- SPDX-License-Identifier: GPL-3.0-or-later
-- Cash counted at the end of a day. Counting again the same day writes over the row; the journal keeps what was there.
CREATE TABLE till_count (
    id            INTEGER PRIMARY KEY,
    day           TEXT NOT NULL,
    at            INTEGER NOT NULL,                          -- of the last count
    float_minor   INTEGER NOT NULL CHECK (float_minor >= 0), -- at the start of the day
    cash_minor    INTEGER NOT NULL,                          -- cash in less cash out, as it was known then
    counted_minor INTEGER NOT NULL CHECK (counted_minor >= 0)
) STRICT;
CREATE INDEX till_count_by_day ON till_count(day);

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Fairs where the shop has a stall. An order belongs to the fair of its place's name on whose days it was taken.

CREATE TABLE fair (
    id          INTEGER PRIMARY KEY,
    name        TEXT NOT NULL CHECK (name <> ''),
    first_day   TEXT NOT NULL,
    last_day    TEXT NOT NULL,
    opens_min   INTEGER NOT NULL,             -- after midnight, on each of its days
    closes_min  INTEGER NOT NULL,
    stall_minor INTEGER NOT NULL CHECK (stall_minor >= 0),
    other_minor INTEGER NOT NULL CHECK (other_minor >= 0),
    worked_min  INTEGER CHECK (worked_min > 0), -- NULL: as long as the stall was open
    note        TEXT NOT NULL DEFAULT '',
    CHECK (first_day <= last_day),
    CHECK (opens_min < closes_min)
) STRICT;

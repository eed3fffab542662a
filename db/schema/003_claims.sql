-- SPDX-License-Identifier: GPL-3.0-or-later
-- What came back after it was handed over, and what was done about it.

CREATE TABLE claim (
    id          INTEGER PRIMARY KEY,
    garment_id  INTEGER NOT NULL REFERENCES garment(id),
    decal_id    INTEGER REFERENCES decal(id), -- NULL: the garment as a whole
    told_on     TEXT NOT NULL,
    fault       TEXT NOT NULL,
    washes      INTEGER CHECK (washes >= 0),  -- NULL: not known
    note        TEXT NOT NULL DEFAULT '',
    answer      TEXT,                         -- NULL: nothing was done yet
    answered_on TEXT,
    CHECK ((answer IS NULL) = (answered_on IS NULL))
) STRICT;
CREATE INDEX claim_by_garment ON claim(garment_id);

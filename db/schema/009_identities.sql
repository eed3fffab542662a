-- SPDX-License-Identifier: GPL-3.0-or-later
-- What an entry is, is what it says and not its number. Nothing here is recorded by a session.

-- The hash of what an entry said when it was done, and that of what the journal says of it here.
CREATE TABLE journal_seal (
    entry_id INTEGER PRIMARY KEY,
    identity BLOB NOT NULL CHECK (LENGTH(identity) = 16),
    salt     BLOB NOT NULL CHECK (LENGTH(salt) = 8),
    seal     BLOB NOT NULL CHECK (LENGTH(seal) = 16)
) STRICT;
CREATE INDEX journal_seal_by_identity ON journal_seal (identity);

-- Where a number that an entry or a row of it had was another's in the line: which it has now.
CREATE TABLE journal_other_id (
    entry_id INTEGER NOT NULL,
    was      INTEGER NOT NULL,
    here     INTEGER NOT NULL,
    PRIMARY KEY (entry_id, was)
) STRICT, WITHOUT ROWID;

-- Marks are hashes now: the program makes them from the entries once this step is done.
CREATE TABLE journal_line_now (
    place    INTEGER PRIMARY KEY CHECK (place > 0),
    entry_id INTEGER NOT NULL UNIQUE,
    mark     BLOB NOT NULL CHECK (LENGTH(mark) = 16)
) STRICT;
INSERT INTO journal_line_now (place, entry_id, mark) SELECT place, entry_id, zeroblob(16) FROM journal_line;
DROP TABLE journal_line;
ALTER TABLE journal_line_now RENAME TO journal_line;

-- This very file: a number by chance that a copy of it does not keep, and where the file lies that bears it.
ALTER TABLE seat_here ADD COLUMN incarnation INTEGER NOT NULL DEFAULT 0;
ALTER TABLE seat_here ADD COLUMN home TEXT NOT NULL DEFAULT '';
ALTER TABLE seat_known ADD COLUMN incarnation INTEGER NOT NULL DEFAULT 0;

-- Which shop it is, is known from the beginning.
INSERT INTO journal_shop (id, shop) VALUES (1, random()) ON CONFLICT DO NOTHING;

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

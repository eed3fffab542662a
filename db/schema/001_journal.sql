-- SPDX-License-Identifier: GPL-3.0-or-later
-- The journal: one entry for each action, with the session's changeset of what it did to the tables of the trade.
-- Nothing here is recorded by the session itself.

-- One installation's copy of the shop. Its order numbers come out of a range of its own, so that two laptops
-- never hand out the same one.
CREATE TABLE seat (
    id INTEGER PRIMARY KEY CHECK (id BETWEEN 1 AND 1023),
    name TEXT NOT NULL CHECK (name <> ''),
    first_order_number INTEGER NOT NULL CHECK (first_order_number > 0),
    last_order_number INTEGER NOT NULL CHECK (last_order_number >= first_order_number)
) STRICT;

-- Which seat this file is. One row. The counters never fall, so that no id and no order number comes twice.
CREATE TABLE seat_here (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    seat_id INTEGER NOT NULL REFERENCES seat (id),
    last_id INTEGER NOT NULL,
    next_order_number INTEGER NOT NULL
) STRICT;

-- Scratch of this laptop: a half-typed order, the last place. Never exchanged.
CREATE TABLE seat_note (
    key TEXT PRIMARY KEY,
    text TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- The changeset stands last: what a history shows is read without it.
CREATE TABLE journal_entry (
    id INTEGER PRIMARY KEY CHECK (id > 0),
    seat_id INTEGER NOT NULL REFERENCES seat (id),
    at INTEGER NOT NULL,
    title TEXT NOT NULL CHECK (title <> ''),
    undoes INTEGER REFERENCES journal_entry (id),
    undone_by INTEGER REFERENCES journal_entry (id),
    changeset BLOB NOT NULL
) STRICT;

-- What an entry is about.
CREATE TABLE journal_subject (
    kind TEXT NOT NULL,
    subject_id INTEGER NOT NULL,
    entry_id INTEGER NOT NULL REFERENCES journal_entry (id),
    PRIMARY KEY (kind, subject_id, entry_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX journal_subject_by_entry ON journal_subject (entry_id);

INSERT INTO seat (id, name, first_order_number, last_order_number) VALUES (1, 'This workshop', 1, 99999);
INSERT INTO seat_here (id, seat_id, last_id, next_order_number) VALUES (1, 1, 0, 1);

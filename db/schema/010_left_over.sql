-- SPDX-License-Identifier: GPL-3.0-or-later
-- What is left of entries once a customer was forgotten. Nothing here is recorded by a session.

-- Of an entry in which something was forgotten since it was sealed: the hash of what is left. Its seal stays what it
-- was, for the marks of the line are made of it, and the salt goes, so that nobody can try names against it.
ALTER TABLE journal_seal ADD COLUMN left_over BLOB CHECK (LENGTH(left_over) = 16);

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Undone orders are found, and any part of a word in the order book.

-- The undos that stand: what they undid can be done again.
CREATE INDEX journal_entry_undoing ON journal_entry (id) WHERE undoes IS NOT NULL AND undone_by IS NULL;

-- The words of all orders, each once, as the search folds them. It keeps nothing of its own.
CREATE VIRTUAL TABLE order_word USING fts5vocab(order_text, row);

-- SPDX-License-Identifier: GPL-3.0-or-later
-- What an entry is called and what gave way, kept as a pattern with its values beside the English, so that a
-- window can say it in its own language (core/trade/kept_sentence.h). NULL where there is the English alone.

ALTER TABLE journal_entry ADD COLUMN said TEXT;     -- the title
ALTER TABLE journal_aside ADD COLUMN said TEXT;     -- the title
ALTER TABLE journal_aside ADD COLUMN why_said TEXT;
ALTER TABLE journal_remark ADD COLUMN said TEXT;    -- the words

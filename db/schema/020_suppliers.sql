-- SPDX-License-Identifier: GPL-3.0-or-later
-- Who a blank style and a film are bought from; empty: not written down.
ALTER TABLE blank_style ADD COLUMN supplier TEXT NOT NULL DEFAULT '';
ALTER TABLE film ADD COLUMN supplier TEXT NOT NULL DEFAULT '';

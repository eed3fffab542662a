-- SPDX-License-Identifier: GPL-3.0-or-later
-- Pressing hours of a single day, in place of the week's. Minutes from midnight.

CREATE TABLE other_hours (
    day    TEXT PRIMARY KEY NOT NULL,
    opens  INTEGER NOT NULL CHECK (opens >= 0),
    closes INTEGER NOT NULL CHECK (closes > opens AND closes <= 1440)
) STRICT;

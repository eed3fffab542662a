-- SPDX-License-Identifier: GPL-3.0-or-later
-- What the knife follows, kept with each wording when its order is taken: another laptop may have other letters, or
-- none. SVG path data, in units of its own; NULL: not kept (a drawing, or an order of before this step).
ALTER TABLE decal ADD COLUMN outline TEXT;

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Styles, films, presses and storage places live on after they were written down: their facts are changed, and what is
-- not used any more is retired.

-- Since when it is not offered for new work; NULL: it is offered.
ALTER TABLE blank_style ADD COLUMN retired_at INTEGER;
ALTER TABLE style_colour ADD COLUMN retired_at INTEGER;
ALTER TABLE film ADD COLUMN retired_at INTEGER;
ALTER TABLE press ADD COLUMN retired_at INTEGER;
ALTER TABLE storage_place ADD COLUMN retired_at INTEGER;

-- Where a size comes among those of its style; NULL: by its position. Position is the key of the row, so that sizes
-- added on two laptops are two rows, and a size in the middle moves no other row.
ALTER TABLE style_size ADD COLUMN rank REAL;

-- A name that is changed is found in the order book at once.
CREATE TRIGGER blank_style_renamed AFTER UPDATE OF name ON blank_style WHEN OLD.name <> NEW.name BEGIN
    UPDATE order_card SET words = (SELECT words FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id IN (SELECT order_id FROM garment WHERE style_id = NEW.id);
END;
CREATE TRIGGER style_colour_renamed AFTER UPDATE OF name ON style_colour WHEN OLD.name <> NEW.name BEGIN
    UPDATE order_card SET words = (SELECT words FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id IN (SELECT order_id FROM garment WHERE colour_id = NEW.id);
END;
CREATE TRIGGER film_renamed AFTER UPDATE OF shade ON film WHEN OLD.shade <> NEW.shade BEGIN
    UPDATE order_card SET words = (SELECT words FROM order_card_source WHERE order_card_source.id = order_card.id)
    WHERE id IN (SELECT order_id FROM garment JOIN decal ON decal.garment_id = garment.id WHERE film_id = NEW.id);
END;

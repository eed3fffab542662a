-- What figures ask of the steps of each garment, of which there are a dozen: kept by triggers, as the cards of orders
-- are, so it is right after every action and every undo. Not recorded.

-- Of its present attempt; a garment with no step of that has no card.
CREATE TABLE garment_card (
    id         INTEGER PRIMARY KEY,     -- the garment's
    pressed_at INTEGER,                 -- when the last step ended; NULL: a step is not done yet
    presses    TEXT NOT NULL            -- ids of the presses used, with a space between; the last used is the last
) STRICT;

CREATE VIEW garment_card_source AS
    SELECT garment.id AS id,
           (SELECT CASE WHEN SUM(finished_at IS NULL) = 0 THEN MAX(finished_at) END FROM press_step
            WHERE garment_id = garment.id AND press_step.attempt = garment.attempt) AS pressed_at,
           COALESCE((SELECT group_concat(press_id, ' ') FROM (
               SELECT press_id FROM press_step
               WHERE garment_id = garment.id AND press_step.attempt = garment.attempt AND press_id IS NOT NULL
               GROUP BY press_id ORDER BY MAX(press_step.id))), '') AS presses
    FROM garment
    WHERE EXISTS (SELECT 1 FROM press_step WHERE garment_id = garment.id AND press_step.attempt = garment.attempt);

CREATE TRIGGER garment_card_begun AFTER INSERT ON garment BEGIN
    DELETE FROM garment_card WHERE id = NEW.id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = NEW.id;
END;
CREATE TRIGGER garment_card_of_attempt AFTER UPDATE OF attempt ON garment BEGIN
    DELETE FROM garment_card WHERE id = NEW.id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = NEW.id;
END;
CREATE TRIGGER garment_card_gone AFTER DELETE ON garment BEGIN
    DELETE FROM garment_card WHERE id = OLD.id;
END;
CREATE TRIGGER press_step_added AFTER INSERT ON press_step BEGIN
    DELETE FROM garment_card WHERE id = NEW.garment_id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = NEW.garment_id;
END;
CREATE TRIGGER press_step_changed AFTER UPDATE ON press_step BEGIN
    DELETE FROM garment_card WHERE id IN (OLD.garment_id, NEW.garment_id);
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id IN (OLD.garment_id, NEW.garment_id);
END;
CREATE TRIGGER press_step_removed AFTER DELETE ON press_step BEGIN
    DELETE FROM garment_card WHERE id = OLD.garment_id;
    INSERT INTO garment_card SELECT * FROM garment_card_source WHERE id = OLD.garment_id;
END;

INSERT INTO garment_card SELECT * FROM garment_card_source;

-- Schema 3: where a session stands is told by the entry that began it and not by the wall clock, and whose it is by that entry's
-- device. What the new columns hold is worked out from the log right after this step, as the other projections are.

DROP INDEX session_by_start;
ALTER TABLE session RENAME COLUMN first_wall_ms TO began_wall_ms;
-- Order of the earliest start, of the earliest entry where none is known; as last_order.
ALTER TABLE session ADD COLUMN began BLOB NOT NULL DEFAULT x'' CHECK (length(began) IN (0, 44));
-- The device that began it; null where no start is known.
ALTER TABLE session ADD COLUMN device BLOB CHECK (device IS NULL OR length(device) = 16);
-- Order of the latest entry by the device of this store; null where it wrote none.
ALTER TABLE session ADD COLUMN own_order BLOB CHECK (own_order IS NULL OR length(own_order) = 44);
-- Until that is worked out, and for good where not one entry of a session can be read.
UPDATE session SET began = last_order;
CREATE INDEX session_by_beginning ON session (began);
CREATE INDEX session_by_device ON session (device, began);
CREATE INDEX session_by_own_order ON session (own_order) WHERE own_order IS NOT NULL;

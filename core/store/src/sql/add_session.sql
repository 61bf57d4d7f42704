INSERT INTO session (id, began_wall_ms, ops, last_order, began) VALUES (?1, ?2, 0, ?3, ?3) RETURNING no

INSERT INTO session (id, first_wall_ms, ops, last_order) VALUES (?1, ?2, 0, ?3) RETURNING no

UPDATE session SET first_wall_ms = ?2, ops = ?3, last_order = ?4 WHERE id = ?1

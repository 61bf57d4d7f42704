SELECT id, first_wall_ms, ops, last_order FROM session ORDER BY first_wall_ms DESC, id DESC

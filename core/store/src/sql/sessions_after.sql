SELECT id, first_wall_ms FROM session WHERE last_order > ?1

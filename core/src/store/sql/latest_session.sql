SELECT id FROM session ORDER BY first_wall_ms DESC, id DESC LIMIT 1

UPDATE session SET began_wall_ms = ?2, ops = ?3, last_order = ?4, began = ?5, device = ?6, own_order = ?7 WHERE id = ?1

SELECT no, began, began_wall_ms, device FROM session WHERE id = ?1

SELECT id, began_wall_ms, ops, last_order, began, device, own_order FROM session WHERE id = ?1

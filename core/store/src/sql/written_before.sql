SELECT id, began_wall_ms, ops, last_order, began, device, own_order FROM session
WHERE own_order < ?1 AND own_order IS NOT NULL ORDER BY own_order DESC LIMIT 1

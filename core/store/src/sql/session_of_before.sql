SELECT id, began_wall_ms, ops, last_order, began, device, own_order FROM session
WHERE device = ?2 AND began < ?1 ORDER BY began DESC LIMIT 1

SELECT id, began_wall_ms, ops, last_order, began, device, own_order FROM session ORDER BY began DESC

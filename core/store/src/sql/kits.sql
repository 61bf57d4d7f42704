-- Kits have version 8 ids (RFC 9562, section 4.2: the version is the high half of the seventh byte). The inner query walks
-- the index of the ids alone.
SELECT id, began_wall_ms, ops, last_order, began, device, own_order FROM session
WHERE no IN (SELECT no FROM session WHERE substr(id, 7, 1) BETWEEN x'80' AND x'8f')
ORDER BY began DESC

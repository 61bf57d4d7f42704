-- Kits have version 8 ids (RFC 9562, section 4.2: the version is the high half of the seventh byte). The inner query walks
-- the index of the ids alone.
SELECT id, first_wall_ms, ops, last_order FROM session
WHERE no IN (SELECT no FROM session WHERE substr(id, 7, 1) BETWEEN x'80' AND x'8f')
ORDER BY first_wall_ms DESC, id DESC

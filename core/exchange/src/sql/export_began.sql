-- A kit, whose id is a UUID of version 8, belongs to no day: it began with the phone's first entry.
-- The unary plus keeps SQLite from sorting whole entries in memory: it walks the ids instead.
SELECT id, sha256, body FROM op
WHERE +session IN (SELECT no FROM session WHERE began_wall_ms BETWEEN ?1 AND ?2 AND substr(hex(id), 13, 1) <> '8')
ORDER BY id

-- The unary plus keeps SQLite from sorting whole entries in memory: it walks the ids instead.
SELECT id, sha256, body FROM op
WHERE +session IN (SELECT no FROM session WHERE began_wall_ms BETWEEN ?1 AND ?2) ORDER BY id

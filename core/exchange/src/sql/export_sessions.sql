-- ?1 is a JSON array of ids, each as 32 hexadecimal digits.
-- The unary plus keeps SQLite from sorting whole entries in memory: it walks the ids instead.
SELECT id, sha256, body FROM op
WHERE +session IN (SELECT no FROM session WHERE lower(hex(id)) IN (SELECT value FROM json_each(?1)))
ORDER BY id

-- Without the hint all sessions are read and sorted to give a few of them.
SELECT id, first_wall_ms FROM session INDEXED BY session_by_start
WHERE first_wall_ms <= ?1 AND (first_wall_ms < ?1 OR id < ?2)
ORDER BY first_wall_ms DESC, id DESC LIMIT 1

-- Without the hint all sessions are read and sorted to give a few of them.
SELECT id FROM session INDEXED BY session_by_start ORDER BY first_wall_ms DESC, id DESC LIMIT 1

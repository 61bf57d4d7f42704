UPDATE session SET
    ops = ops + ?2,
    first_wall_ms = min(first_wall_ms, ?3),
    last_order = max(last_order, ?4)
WHERE no = ?1

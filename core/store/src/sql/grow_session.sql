UPDATE session SET
    ops = ops + ?2,
    last_order = max(last_order, ?3),
    began = ?4,
    began_wall_ms = ?5,
    device = ?6,
    own_order = nullif(max(coalesce(own_order, x''), coalesce(?7, x'')), x'')
WHERE no = ?1

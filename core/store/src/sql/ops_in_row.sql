SELECT session.id, op.id FROM op JOIN session ON session.no = op.session
WHERE op.seq BETWEEN ?1 AND ?2 ORDER BY op.seq

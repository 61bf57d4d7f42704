SELECT op.sha256, op.body, op.id, session.id FROM op JOIN session ON session.no = op.session ORDER BY op.seq

SELECT op.sha256, op.body FROM session JOIN op ON op.session = session.no WHERE session.id = ?1 ORDER BY op.seq

INSERT INTO snapshot (session, ops, last_order, version, body)
SELECT no, ?2, ?3, ?4, ?5 FROM session WHERE id = ?1
ON CONFLICT (session) DO UPDATE SET
    ops = excluded.ops, last_order = excluded.last_order, version = excluded.version, body = excluded.body

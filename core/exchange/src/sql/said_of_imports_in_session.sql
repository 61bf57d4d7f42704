-- Entries about an import are made in the sessions that it brought, about the entries there.
SELECT op.body FROM session JOIN op ON op.session = session.no
WHERE session.id = ?1 AND instr(op.body, CAST('"kind":"import_' AS BLOB)) > 0

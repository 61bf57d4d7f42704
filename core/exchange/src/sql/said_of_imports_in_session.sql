-- What is said of an import is said in the sessions that it brought, of the entries there.
SELECT op.body FROM session JOIN op ON op.session = session.no
WHERE session.id = ?1 AND instr(op.body, CAST('"kind":"import_' AS BLOB)) > 0

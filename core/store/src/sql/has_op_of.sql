-- In canonical bytes the name of the device stands as it is; within a text its quotes would be escaped.
SELECT EXISTS (SELECT 1 FROM session JOIN op ON op.session = session.no WHERE session.id = ?1 AND instr(op.body, ?2))

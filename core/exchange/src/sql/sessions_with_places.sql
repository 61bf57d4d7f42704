SELECT id FROM session WHERE no IN (SELECT session FROM op WHERE instr(body, CAST('"peg_placed"' AS BLOB)) > 0)

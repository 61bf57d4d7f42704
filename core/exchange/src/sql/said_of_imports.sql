SELECT body FROM op WHERE instr(body, CAST('"kind":"import_' AS BLOB)) > 0

SELECT id, sha256, body FROM op ORDER BY id

INSERT INTO op (session, id, sha256, body) VALUES (?1, ?2, ?3, ?4) ON CONFLICT (id) DO NOTHING

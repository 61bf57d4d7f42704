INSERT INTO op (session, id, kind, sha256, body) VALUES (?1, ?2, ?3, ?4, ?5) ON CONFLICT (id) DO NOTHING

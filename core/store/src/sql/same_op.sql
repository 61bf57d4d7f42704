SELECT body = ?2 AND sha256 = ?3 FROM op WHERE id = ?1

SELECT body = ?2 FROM op WHERE id = ?1

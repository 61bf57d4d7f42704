UPDATE op SET sha256 = ?3, body = ?4 WHERE id = ?2 AND session = ?1 AND (sha256 = ?3 OR body = ?4)

SELECT no FROM session WHERE id = ?1

UPDATE import SET undone_first_seq = ?2, undone_last_seq = ?3 WHERE id = ?1

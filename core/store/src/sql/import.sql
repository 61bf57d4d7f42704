SELECT id, wall_ms, offset_min, source, first_seq, last_seq, undone_first_seq, undone_last_seq
FROM import WHERE id = ?1

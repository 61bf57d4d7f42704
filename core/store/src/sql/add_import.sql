INSERT INTO import (id, wall_ms, offset_min, source, first_seq, last_seq) VALUES (?1, ?2, ?3, ?4, ?5, ?6)

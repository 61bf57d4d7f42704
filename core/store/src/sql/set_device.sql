INSERT INTO meta (key, value) VALUES ('device', ?1)

-- Schema 2: what each import brought, so that one undo takes back one import; the latest clock reading
-- without a look at every session.

CREATE INDEX session_by_order ON session (last_order);

CREATE TABLE import (
    no INTEGER PRIMARY KEY,
    id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
    wall_ms INTEGER NOT NULL,
    offset_min INTEGER NOT NULL,
    source TEXT NOT NULL,
    -- An import is one transaction of the one writer: what it brought stands in a row.
    first_seq INTEGER NOT NULL,
    last_seq INTEGER NOT NULL,
    -- The ops that took it back, while it is taken back.
    undone_first_seq INTEGER,
    undone_last_seq INTEGER
) STRICT;

-- Schema 1. Shipped schemas are never edited: a change is the next file.

-- What the file itself is: the device that writes here.
CREATE TABLE meta (
    key TEXT PRIMARY KEY NOT NULL,
    value BLOB NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
    key TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- One row a session: a projection of its ops, so that opening reads no op it doesn't need.
CREATE TABLE session (
    no INTEGER PRIMARY KEY,
    id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
    first_wall_ms INTEGER NOT NULL,
    ops INTEGER NOT NULL,
    -- Order of the latest op, big-endian: clock ms (8 bytes), count (4), device (16), id (16).
    last_order BLOB NOT NULL CHECK (length(last_order) = 44)
) STRICT;
CREATE INDEX session_by_start ON session (first_wall_ms);

-- The log. Rows are added, never changed, never deleted.
CREATE TABLE op (
    seq INTEGER PRIMARY KEY,
    session INTEGER NOT NULL REFERENCES session (no),
    id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
    -- The hash stands right before the bytes it is of: salvage finds both in a torn page.
    sha256 BLOB NOT NULL CHECK (length(sha256) = 32),
    body BLOB NOT NULL
) STRICT;
CREATE INDEX op_by_session ON op (session);

-- Folded sessions, to be thrown away at will.
CREATE TABLE snapshot (
    session INTEGER PRIMARY KEY REFERENCES session (no),
    ops INTEGER NOT NULL,
    last_order BLOB NOT NULL,
    version INTEGER NOT NULL,
    body BLOB NOT NULL
) STRICT;

-- How often a capture was read again from its documents. Its lines are replaced then, under the same
-- number; whoever remembers what they were can tell by this. Captures read once have no row.
CREATE TABLE reread (
  capture_id INTEGER PRIMARY KEY REFERENCES capture(id) ON DELETE CASCADE,
  times      INTEGER NOT NULL
) STRICT;

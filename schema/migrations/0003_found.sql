-- What the linker found for each capture among the lines seen before it, so that it is worked out
-- once. Nothing here is a source: a row whose fingerprint is not the one expected is worked out
-- again, and dropping all rows loses no fact.

CREATE TABLE found (
  capture_id  INTEGER PRIMARY KEY REFERENCES capture(id) ON DELETE CASCADE,
  fingerprint TEXT NOT NULL         -- of everything the answer depends on
) STRICT;

CREATE TABLE found_link (
  capture_id      INTEGER NOT NULL REFERENCES found(capture_id) ON DELETE CASCADE,
  position        INTEGER NOT NULL,
  line_id         INTEGER NOT NULL, -- in this capture
  then_capture_id INTEGER NOT NULL, -- where it was last seen, under another code or name
  then_line_id    INTEGER NOT NULL,
  asked           INTEGER NOT NULL CHECK (asked IN (0, 1)),  -- 1: waits for a yes or no
  authority       TEXT NOT NULL CHECK (authority IN ('code', 'rule', 'stylist')),
  evidence        TEXT NOT NULL,    -- comma-separated
  score           REAL NOT NULL,
  sentence        TEXT NOT NULL,
  PRIMARY KEY (capture_id, position)
) STRICT;

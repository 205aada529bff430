-- A book: shops, captures with the documents they came from, packed versions of lines,
-- rejections, and decisions about which line is which. Never edited once landed.

CREATE TABLE shop (
  id       INTEGER PRIMARY KEY,
  slug     TEXT NOT NULL UNIQUE,
  name     TEXT NOT NULL,
  country  TEXT NOT NULL,           -- ISO 3166-1 alpha-2, or empty
  currency TEXT,                    -- ISO 4217
  sizes    TEXT NOT NULL            -- size system of bare numbers
) STRICT;

-- A document's bytes, kept once however many captures use it.
CREATE TABLE document (
  id     INTEGER PRIMARY KEY,
  sha256 BLOB NOT NULL UNIQUE,
  bytes  INTEGER NOT NULL
) STRICT;

-- Independent zstd frames of at most 1 MiB of the document each.
CREATE TABLE document_chunk (
  document_id INTEGER NOT NULL REFERENCES document(id) ON DELETE CASCADE,
  position    INTEGER NOT NULL,
  frame       BLOB NOT NULL,
  PRIMARY KEY (document_id, position)
) STRICT;

-- What was seen of a shop on one date. `manifest` lists (line, versions); it is whole, or a delta
-- against the manifest of capture `base_id`. See schema/FORMAT.md for the bytes.
CREATE TABLE capture (
  id               INTEGER PRIMARY KEY AUTOINCREMENT,   -- never used again after an undo
  shop_id          INTEGER NOT NULL REFERENCES shop(id),
  season           TEXT NOT NULL,
  captured_on      TEXT NOT NULL,   -- ISO 8601
  scope_kind       TEXT NOT NULL CHECK (scope_kind IN ('all', 'categories', 'picks')),
  scope_categories TEXT NOT NULL,   -- comma-separated slugs
  base_id          INTEGER REFERENCES capture(id),
  line_count       INTEGER NOT NULL,
  manifest         BLOB NOT NULL,
  origins          BLOB NOT NULL    -- document and line of each line of the manifest
) STRICT;
CREATE INDEX capture_by_shop ON capture (shop_id, captured_on, id);

CREATE TABLE capture_document (
  capture_id  INTEGER NOT NULL REFERENCES capture(id) ON DELETE CASCADE,
  position    INTEGER NOT NULL,
  document_id INTEGER NOT NULL REFERENCES document(id),
  name        TEXT NOT NULL,
  importer    TEXT NOT NULL,
  mapping     TEXT NOT NULL,
  PRIMARY KEY (capture_id, position)
) STRICT;
CREATE INDEX capture_document_by_document ON capture_document (document_id);

CREATE TABLE rejection (
  id         INTEGER PRIMARY KEY,
  capture_id INTEGER NOT NULL REFERENCES capture(id) ON DELETE CASCADE,
  document   INTEGER NOT NULL,      -- position in capture_document
  line       INTEGER,
  byte       INTEGER NOT NULL,
  field      TEXT NOT NULL,
  kind       TEXT NOT NULL,
  refused    TEXT NOT NULL CHECK (refused IN ('row', 'cell', 'nothing')),
  what       TEXT NOT NULL,
  how_to_fix TEXT NOT NULL,
  excerpt    BLOB NOT NULL,         -- may hold bytes that are no UTF-8
  line_code  TEXT NOT NULL,
  name       TEXT NOT NULL
) STRICT;
CREATE INDEX rejection_by_capture ON rejection (capture_id);

-- A line's place in the book. `key` is the exact evidence it was first known by.
CREATE TABLE line (
  id      INTEGER PRIMARY KEY,
  shop_id INTEGER NOT NULL REFERENCES shop(id),
  key     TEXT NOT NULL,
  UNIQUE (shop_id, key)
) STRICT;

-- Versions of one part of lines, numbered from `first_version` on, many to a zstd frame.
-- `hashes` holds 8 bytes a version: the content address.
CREATE TABLE pack (
  id            INTEGER PRIMARY KEY,
  shop_id       INTEGER NOT NULL REFERENCES shop(id),
  part          TEXT NOT NULL CHECK (part IN ('card', 'detail', 'offers')),
  first_version INTEGER NOT NULL,
  version_count INTEGER NOT NULL,
  hashes        BLOB NOT NULL,
  frame         BLOB NOT NULL,
  UNIQUE (shop_id, part, first_version)
) STRICT;

-- Two lines of the book that are the same style, or that the stylist said are not.
CREATE TABLE link (
  id        INTEGER PRIMARY KEY,
  line_a    INTEGER NOT NULL REFERENCES line(id),
  line_b    INTEGER NOT NULL REFERENCES line(id),
  same      INTEGER NOT NULL CHECK (same IN (0, 1)),
  authority TEXT NOT NULL CHECK (authority IN ('code', 'rule', 'stylist')),
  evidence  TEXT NOT NULL,
  score     REAL NOT NULL,
  sentence  TEXT NOT NULL,
  UNIQUE (line_a, line_b),
  CHECK (line_a < line_b)
) STRICT;

-- Delivery and return terms: what was observed on one day, field by field (schema/terms_fields.h).

CREATE TABLE terms (
  id          INTEGER PRIMARY KEY,
  shop_id     INTEGER NOT NULL REFERENCES shop(id),
  observed_on TEXT NOT NULL,        -- ISO 8601
  UNIQUE (shop_id, observed_on)
) STRICT;

CREATE TABLE terms_field (
  terms_id    INTEGER NOT NULL REFERENCES terms(id) ON DELETE CASCADE,
  field       TEXT NOT NULL,
  value       TEXT NOT NULL,        -- canonical text
  sentence    TEXT NOT NULL,        -- it was read from; empty: typed in
  document    TEXT NOT NULL,        -- file name; empty: typed in
  byte        INTEGER NOT NULL,
  confidence  TEXT NOT NULL CHECK (confidence IN ('stated', 'confirmed')),
  PRIMARY KEY (terms_id, field)
) STRICT;

-- Readings that wait for a yes, and those that were answered, so that they are not asked again.
CREATE TABLE terms_doubt (
  id          INTEGER PRIMARY KEY,
  terms_id    INTEGER NOT NULL REFERENCES terms(id) ON DELETE CASCADE,
  field       TEXT NOT NULL,
  value       TEXT NOT NULL,
  sentence    TEXT NOT NULL,
  document    TEXT NOT NULL,
  byte        INTEGER NOT NULL,
  doubt       TEXT NOT NULL,
  contradicts TEXT NOT NULL,
  answer      TEXT NOT NULL CHECK (answer IN ('open', 'yes', 'no')),
  UNIQUE (terms_id, field, value, sentence)
) STRICT;
CREATE INDEX terms_doubt_open ON terms_doubt (answer, terms_id);

CREATE TABLE terms_document (
  terms_id    INTEGER NOT NULL REFERENCES terms(id) ON DELETE CASCADE,
  document_id INTEGER NOT NULL REFERENCES document(id),
  name        TEXT NOT NULL,
  PRIMARY KEY (terms_id, document_id)
) STRICT;

-- What tables of a shop need said, kept under a name; and what was said about each document of a
-- capture, so that it can be read again as it was read. Never edited once landed.

CREATE TABLE profile (
  id         INTEGER PRIMARY KEY,
  shop_id    INTEGER NOT NULL REFERENCES shop(id),
  name       TEXT NOT NULL,
  is_default INTEGER NOT NULL CHECK (is_default IN (0, 1)),
  options    TEXT NOT NULL,         -- `name=word` a line
  UNIQUE (shop_id, name)
) STRICT;
CREATE UNIQUE INDEX profile_default ON profile (shop_id) WHERE is_default = 1;

ALTER TABLE capture_document ADD COLUMN profile TEXT NOT NULL DEFAULT '';  -- its name; empty: none
ALTER TABLE capture_document ADD COLUMN options TEXT NOT NULL DEFAULT '';  -- besides the profile

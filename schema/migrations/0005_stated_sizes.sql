-- What a shop itself says its sizes run from and to, as read on a date. Append-only but for a
-- correction on the same date.
CREATE TABLE stated_sizes (
  id        INTEGER PRIMARY KEY,
  shop_id   INTEGER NOT NULL REFERENCES shop(id),
  sizes     TEXT NOT NULL,          -- verbatim: 8-26
  stated_on TEXT NOT NULL,          -- ISO 8601
  UNIQUE (shop_id, stated_on)
) STRICT;

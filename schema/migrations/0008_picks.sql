-- Lines the stylist recommended, with her own words about them.

-- Her words, by list. The starting words are common practice of the trade (no source); she edits them.
CREATE TABLE pick_vocabulary (
  id   INTEGER PRIMARY KEY,
  list TEXT NOT NULL CHECK (list IN
         ('personality', 'palette', 'dress-code', 'body-shape', 'caution')),
  word TEXT NOT NULL,
  UNIQUE (list, word)
) STRICT;

CREATE TABLE pick (
  id        INTEGER PRIMARY KEY AUTOINCREMENT,   -- never used again after a removal
  line_id   INTEGER NOT NULL REFERENCES line(id),
  seen_on   TEXT NOT NULL,          -- ISO 8601: the day of the capture it was picked from
  picked_on TEXT NOT NULL,
  theme     TEXT NOT NULL,          -- empty: none
  review_on TEXT,
  note      TEXT NOT NULL
) STRICT;
CREATE INDEX pick_by_line ON pick (line_id);

CREATE TABLE pick_word (
  pick_id INTEGER NOT NULL REFERENCES pick(id) ON DELETE CASCADE,
  word_id INTEGER NOT NULL REFERENCES pick_vocabulary(id),
  PRIMARY KEY (pick_id, word_id)
) STRICT;
CREATE INDEX pick_word_by_word ON pick_word (word_id);

INSERT INTO pick_vocabulary (list, word) VALUES
  ('personality', 'classic'), ('personality', 'creative'), ('personality', 'dramatic'),
  ('personality', 'natural'), ('personality', 'romantic'),
  ('palette', 'cool'), ('palette', 'warm'), ('palette', 'light'), ('palette', 'deep'),
  ('palette', 'clear'), ('palette', 'muted'),
  ('dress-code', 'business'), ('dress-code', 'smart casual'), ('dress-code', 'casual'),
  ('dress-code', 'cocktail'), ('dress-code', 'black tie'),
  ('body-shape', 'defines the waist'), ('body-shape', 'balances the shoulders'),
  ('body-shape', 'skims the middle'), ('body-shape', 'lengthens the leg'),
  ('body-shape', 'roomy at the bust'),
  ('caution', 'runs small'), ('caution', 'runs large'), ('caution', 'needs a slip'),
  ('caution', 'dry clean only'), ('caution', 'creases');

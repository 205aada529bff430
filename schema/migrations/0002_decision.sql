-- What the stylist decided about two lines, newest last. The newest row of a pair is what holds;
-- taking a decision back removes that row, so the one before it holds again.
-- A line may stand against itself on two days: shops use names and codes again for new styles.

CREATE TABLE decision (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  line_a   INTEGER NOT NULL REFERENCES line(id),
  on_a     TEXT NOT NULL,           -- ISO 8601: when the line was seen that was decided about
  line_b   INTEGER NOT NULL REFERENCES line(id),
  on_b     TEXT NOT NULL,
  same     INTEGER NOT NULL CHECK (same IN (0, 1)),
  score    REAL NOT NULL,           -- what the rules made of the pair, 0 where it was not asked
  sentence TEXT NOT NULL,           -- and why
  CHECK (line_a < line_b OR (line_a = line_b AND on_a < on_b))
) STRICT;
CREATE INDEX decision_by_pair ON decision (line_a, line_b);

INSERT INTO decision (line_a, on_a, line_b, on_b, same, score, sentence)
  SELECT line_a, '1970-01-01', line_b, '1970-01-01', same, score, sentence FROM link
  WHERE authority = 'stylist' ORDER BY id;
DROP TABLE link;

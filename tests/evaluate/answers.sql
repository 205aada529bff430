-- The answers of a changes JSON as plain rows, without what depends on ids and places in documents.
-- Parameters: $file, $swapped (1: told the other way round, and only what swaps as a whole).
CREATE TEMP TABLE mirror (kind TEXT, mirrored TEXT);
INSERT INTO mirror VALUES
  ('colour-added', 'colour-dropped'), ('sizes-widened', 'sizes-narrowed'),
  ('size-gap-filled', 'size-gap-opened'), ('fit-range-added', 'fit-range-dropped'),
  ('price-up', 'price-down'), ('marked-down', 'markdown-ended'), ('stock-back', 'stock-out');
INSERT INTO mirror SELECT mirrored, kind FROM mirror;
CREATE TEMP TABLE change AS
  SELECT value ->> 'kind' AS kind, value -> 'before' AS before, value -> 'after' AS after,
    value -> 'line' AS line
  FROM json_each(readfile($file), '$.changes');
SELECT CASE $swapped WHEN 1 THEN ifnull(mirrored, kind) ELSE kind END AS kind,
  CASE $swapped WHEN 1 THEN after ELSE before END AS before,
  CASE $swapped WHEN 1 THEN before ELSE after END AS after,
  CASE WHEN $swapped IS NULL THEN json_remove(line, '$.id') END AS line
FROM change LEFT JOIN mirror USING (kind)
-- Told from the later side a line is gone that is new or back, and what a shop shows as a whole has
-- its own direction.
WHERE $swapped IS NULL
  OR (line <> 'null' AND kind NOT IN ('line-new', 'line-dropped', 'line-returned', 'line-not-covered'))
ORDER BY 1, 2, 3, 4;
